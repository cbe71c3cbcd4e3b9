using System.Diagnostics;

namespace HotShop.Benchmarks.Live;

/// <summary>Compiles the preload that slows every fsync down. Linux with gcc.</summary>
static class SlowDisk
{
    public static async Task<IReadOnlyDictionary<string, string>> Environment(string folder, int milliseconds)
    {
        var library = Path.Combine(folder, "slow-disk.so");
        var source = Path.Combine(AppContext.BaseDirectory, "slow-disk.c");
        using var compiler = Process.Start(new ProcessStartInfo("gcc", ["-shared", "-fPIC", "-O2", "-o", library, source, "-ldl"]))!;
        await compiler.WaitForExitAsync();
        if (compiler.ExitCode != 0) throw new InvalidOperationException("gcc could not compile slow-disk.c; install gcc, or leave out --slow-disk-ms");
        return new Dictionary<string, string> { ["LD_PRELOAD"] = library, ["HOTSHOP_SYNC_MS"] = $"{milliseconds}" };
    }
}
