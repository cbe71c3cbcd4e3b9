namespace HotShop.Monitor.Store;

/// <summary>The store cannot be used; the message is one line that says where, what and what to do.</summary>
public sealed class StoreException(string message, Exception? cause = null) : Exception(message, cause);
