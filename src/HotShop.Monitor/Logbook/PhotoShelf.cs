using System.Security.Cryptography;
using System.Text;
using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Logbook;

/// <summary>A picture by its content, whatever its name says.</summary>
public enum PhotoKind { Jpeg, Png }

/// <summary>
/// Pictures of log entries, as files beside the store: <c>photos/</c> in the data folder. A file's name is made from the entry's id, never from what a caller
/// sends. An entry has one picture, which is never changed: a wrong one goes with its entry, which is corrected.
/// </summary>
public sealed class PhotoShelf(StudioPlan plan)
{
    public const int MostBytes = 6 << 20;

    readonly string folder = Path.Combine(plan.DataDirectory, "photos");

    /// <returns>Null for anything but a JPEG or PNG.</returns>
    public static PhotoKind? KindOf(ReadOnlySpan<byte> content)
    {
        // JFIF and Exif both begin with a start of image and another marker; PNG with the signature of its specification, section 5.2.
        if (content.StartsWith<byte>([0xFF, 0xD8, 0xFF])) return PhotoKind.Jpeg;
        return content.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) ? PhotoKind.Png : null;
    }

    /// <summary>The kept picture of an entry, or null.</summary>
    public (string Path, PhotoKind Kind)? Of(string entry)
    {
        foreach (var kind in Enum.GetValues<PhotoKind>())
            if (PathOf(entry, kind) is var path && File.Exists(path)) return (path, kind);
        return null;
    }

    /// <returns>False when the entry has another picture already.</returns>
    public async Task<bool> Keep(string entry, byte[] content, PhotoKind kind, CancellationToken stop)
    {
        if (Of(entry) is { } kept) return (await File.ReadAllBytesAsync(kept.Path, stop)).AsSpan().SequenceEqual(content);
        Directory.CreateDirectory(folder);
        // Written aside and moved: a power cut leaves no half picture.
        var aside = Path.Combine(folder, $"{Guid.NewGuid():N}.part");
        await File.WriteAllBytesAsync(aside, content, stop);
        File.Move(aside, PathOf(entry, kind), overwrite: true);
        return true;
    }

    string PathOf(string entry, PhotoKind kind) =>
        Path.Combine(folder, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(entry)))[..32] + (kind == PhotoKind.Jpeg ? ".jpg" : ".png"));
}
