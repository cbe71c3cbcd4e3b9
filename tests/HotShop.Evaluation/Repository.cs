namespace HotShop.Evaluation;

/// <summary>The working copy that this program was built in.</summary>
static class Repository
{
    public static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "HotShop.Monitor.sln"))) folder = folder.Parent ?? throw new InvalidOperationException("no solution above this program");
        return folder.FullName;
    }
}
