using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

public sealed record BackupOptions
{
    [Description("Folder of the nightly backups, relative to this file; best on another disk. Left out: none are made.")]
    public string? Folder { get; init; }

    [Description("How many nights are kept, 1 to 366.")]
    public int Keep { get; init; } = 14;
}
