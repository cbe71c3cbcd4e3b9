using System.Globalization;

namespace HotShop.Benchmarks;

/// <summary>What this process has written so far. Linux only: read from <c>/proc/self/io</c>.</summary>
/// <param name="Handed">Bytes handed to the system's write calls (wchar).</param>
/// <param name="Pages">Bytes of the pages of 4,096 that they dirtied on the way to the disk (write_bytes): what a disk or card gets at least.</param>
readonly record struct WrittenBytes(long Handed, long Pages)
{
    public static WrittenBytes Now()
    {
        var lines = File.ReadAllLines("/proc/self/io").Select(l => l.Split(": ")).ToDictionary(p => p[0], p => long.Parse(p[1], CultureInfo.InvariantCulture));
        return new(lines["wchar"], lines["write_bytes"]);
    }

    public static WrittenBytes operator -(WrittenBytes later, WrittenBytes earlier) => new(later.Handed - earlier.Handed, later.Pages - earlier.Pages);
}
