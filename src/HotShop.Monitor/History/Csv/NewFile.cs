namespace HotShop.Monitor.History.Csv;

/// <summary>Writes a file aside and gives it its name when it is complete: a half-written one never looks like a whole one, and nothing is overwritten before.</summary>
static class NewFile
{
    public static T Write<T>(string path, Func<Stream, T> write)
    {
        var aside = $"{path}.part-{Guid.NewGuid():N}"[..(path.Length + 12)];
        try
        {
            T result;
            // The writer closes what it writes to; the bytes are forced to the disk by name.
            using (var file = new FileStream(aside, FileMode.CreateNew, FileAccess.Write, FileShare.Read, 1 << 16)) result = write(file);
            using (var file = new FileStream(aside, FileMode.Open, FileAccess.ReadWrite)) file.Flush(flushToDisk: true);
            File.Move(aside, path, overwrite: true);
            return result;
        }
        finally
        {
            File.Delete(aside);
        }
    }
}
