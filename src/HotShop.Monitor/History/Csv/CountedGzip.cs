using System.IO.Compression;

namespace HotShop.Monitor.History.Csv;

/// <summary>Unpacks a gzip file and counts what came out, so that one which was cut off is noticed.</summary>
sealed class CountedGzip(Stream packed) : Stream
{
    readonly GZipStream gzip = new(packed, CompressionMode.Decompress);
    uint length;

    /// <summary>Bytes that came out so far, modulo 2³² as in the file's own count.</summary>
    public override long Length => length;

    public override int Read(byte[] buffer, int offset, int count) => Counted(gzip.Read(buffer, offset, count));

    public override int Read(Span<byte> buffer) => Counted(gzip.Read(buffer));

    int Counted(int read)
    {
        length += (uint)read;
        return read;
    }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Position { get => length; set => throw new NotSupportedException(); }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing) gzip.Dispose();
        base.Dispose(disposing);
    }
}
