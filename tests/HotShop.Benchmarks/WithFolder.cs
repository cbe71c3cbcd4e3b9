namespace HotShop.Benchmarks;

/// <summary>Lends a folder of its own to a benchmark and removes it afterwards.</summary>
static class WithFolder
{
    public static async Task<int> Run(DirectoryInfo parent, Func<string, Task> benchmark)
    {
        var own = Directory.CreateDirectory(Path.Combine(parent.FullName, $"hotshop-benchmark-{Guid.NewGuid():N}"));
        try
        {
            await benchmark(own.FullName);
            return 0;
        }
        finally
        {
            own.Delete(recursive: true);
        }
    }
}
