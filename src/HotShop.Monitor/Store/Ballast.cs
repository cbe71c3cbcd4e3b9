namespace HotShop.Monitor.Store;

/// <summary>A file that takes up room, so that there is some to free when the disk is full: alarms can then still be stored.</summary>
sealed class Ballast(string directory, int mebibytes)
{
    readonly string path = Path.Combine(directory, "ballast");

    public bool IsThere => File.Exists(path) && new FileInfo(path).Length == Size;

    long Size => mebibytes * 1024L * 1024;

    /// <summary>Bytes that files of this user may still take on the disk of the store.</summary>
    public long FreeBytes => new DriveInfo(Path.GetFullPath(directory)).AvailableFreeSpace;

    /// <summary>Puts it there when there is room for it four times over. Real bytes, no sparse file.</summary>
    public void Restore()
    {
        if (IsThere || FreeBytes < Size * 4) return;
        var block = new byte[1 << 20];
        // Not zeroes: some file systems store those in no room at all.
        for (var i = 0; i < block.Length; i++) block[i] = (byte)(i * 31 + 7);
        using var file = new FileStream(path, FileMode.Create, FileAccess.Write);
        for (var i = 0; i < mebibytes; i++) file.Write(block);
        file.Flush(flushToDisk: true);
    }

    /// <returns>Whether room was made.</returns>
    public bool Free()
    {
        if (!File.Exists(path)) return false;
        File.Delete(path);
        return true;
    }
}
