namespace HotShop.Monitor.Store;

/// <summary>One service per store: held from start to end, freed by the system when the process dies.</summary>
sealed class StoreLock : IDisposable
{
    readonly FileStream file;

    StoreLock(FileStream file) => this.file = file;

    /// <exception cref="StoreException">Another process has the store.</exception>
    public static StoreLock Take(string directory)
    {
        var path = Path.Combine(directory, "hotshop.lock");
        try
        {
            return new StoreLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException cause)
        {
            throw new StoreException($"{path}: another hotshop runs on this store; stop it first, or name another data folder", cause);
        }
        catch (UnauthorizedAccessException cause)
        {
            throw new StoreException($"{path}: cannot be written ({cause.Message}); give the service's user the right to write in that folder", cause);
        }
    }

    /// <summary>Whether a process has the store at this moment.</summary>
    public static bool IsHeld(string directory)
    {
        if (!File.Exists(Path.Combine(directory, "hotshop.lock"))) return false;
        try
        {
            Take(directory).Dispose();
            return false;
        }
        catch (StoreException taken) when (taken.InnerException is IOException)
        {
            return true;
        }
    }

    public void Dispose() => file.Dispose();
}
