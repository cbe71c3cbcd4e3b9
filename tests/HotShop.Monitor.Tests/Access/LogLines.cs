using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace HotShop.Monitor.Tests.Access;

/// <summary>Everything that was logged, as text.</summary>
sealed class LogLines : ILoggerProvider
{
    readonly ConcurrentQueue<string> lines = new();

    public IReadOnlyList<string> Lines => [.. lines];

    public ILogger CreateLogger(string categoryName) => new Writer(lines);

    public void Dispose() { }

    sealed class Writer(ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => lines.Enqueue(formatter(state, exception));
    }
}
