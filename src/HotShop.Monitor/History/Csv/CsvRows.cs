using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace HotShop.Monitor.History.Csv;

/// <summary>The file is no CSV that can be read further: one line says where and what to do.</summary>
sealed class CsvFileException(string message) : Exception(message);

/// <summary>
/// Rows of a CSV file (RFC 4180) with a header, one at a time: commas, or semicolons as spreadsheets write where the comma is the decimal sign;
/// UTF-8 with or without a byte order mark; compressed with gzip or not. Holds one row in memory, however long the file is.
/// </summary>
sealed class CsvRows : IDisposable
{
    /// <summary>A field longer than this is a quote that was never closed.</summary>
    const int LongestField = 64 << 10;

    readonly StreamReader reader;
    readonly Stream? packed;
    readonly CountedGzip? unpacked;
    readonly CsvParser parser;
    readonly Dictionary<string, int> columns = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="file">Read from its beginning; closed with the rows.</param>
    /// <param name="name">What people call the file.</param>
    /// <exception cref="CsvFileException">There is no header.</exception>
    public CsvRows(Stream file, string name)
    {
        Name = name;
        (packed, unpacked) = Unpacked(file);
        reader = new StreamReader(unpacked ?? file, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true, 1 << 16);
        var ahead = new HeaderAhead(reader);
        HasDecimalComma = ahead.Line.Contains(';', StringComparison.Ordinal) && !ahead.Line.Contains(',', StringComparison.Ordinal);
        parser = new CsvParser(ahead, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = HasDecimalComma ? ";" : ",", Mode = CsvMode.RFC4180, IgnoreBlankLines = true, MaxFieldSize = LongestField, BadDataFound = null, BufferSize = 1 << 16, CacheFields = false,
        });
        if (!Advance() || parser.Count == 0) throw new CsvFileException($"{name}: the file is empty; its first line names the columns");
        for (var i = 0; i < parser.Count; i++)
            if (!columns.TryAdd(parser[i].Trim(), i)) throw new CsvFileException($"{name}, line 1: the column '{parser[i].Trim()}' is there twice; name every column once");
    }

    public string Name { get; }

    /// <summary>Semicolons separate the cells, so a comma in a number is its decimal sign.</summary>
    public bool HasDecimalComma { get; }

    public IReadOnlyCollection<string> Columns => columns.Keys;

    public bool Has(string column) => columns.ContainsKey(column);

    /// <summary>Line of the file on which the row begins, counted from 1.</summary>
    public long Line => parser.RawRow - parser.RawRecord.AsSpan().TrimEnd("\r\n").Count('\n');

    /// <returns>False at the end of the file.</returns>
    /// <exception cref="CsvFileException">A field is longer than any this file can have.</exception>
    public bool Read() => Advance();

    /// <summary>A cell, without blanks around it; null where it is empty, the column is not there or the row is too short.</summary>
    public string? this[string column] => columns.TryGetValue(column, out var i) && i < parser.Count && parser[i].Trim() is { Length: > 0 } text ? text : null;

    /// <summary>What is wrong with the row as a row; null: nothing.</summary>
    public string? Problem
    {
        get
        {
            if (parser.Count != columns.Count) return $"it has {parser.Count} cells, the header {columns.Count}";
            var text = parser.RawRecord.AsSpan();
            if (text.Contains('\0')) return "it holds a zero byte";
            return text.Contains('\uFFFD') ? "it is not UTF-8" : null;
        }
    }

    bool Advance()
    {
        try
        {
            if (parser.Read()) return true;
            if (unpacked is not null && packed is not null && unpacked.Length != PromisedLength(packed)) throw new InvalidDataException();
            return false;
        }
        catch (MaxFieldSizeException)
        {
            throw new CsvFileException($"{Name}, from line {parser.RawRow}: a cell has more than {LongestField} characters; a quote is probably not closed");
        }
        catch (InvalidDataException)
        {
            throw new CsvFileException($"{Name}, after line {parser.RawRow}: the compressed file is damaged, cut off or put together from several; make it again, or unpack it first");
        }
    }

    static (Stream? Packed, CountedGzip? Unpacked) Unpacked(Stream file)
    {
        Span<byte> magic = stackalloc byte[2];
        var read = file.ReadAtLeast(magic, 2, throwOnEndOfStream: false);
        file.Position = 0;
        // RFC 1952: a gzip file begins with 31, 139.
        return read == 2 && magic[0] == 31 && magic[1] == 139 ? (file, new CountedGzip(file)) : (null, null);
    }

    /// <summary>RFC 1952: the last four bytes are the length unpacked. The library takes a file that is cut off for one that has ended.</summary>
    static long PromisedLength(Stream file)
    {
        Span<byte> last = stackalloc byte[4];
        file.Seek(-4, SeekOrigin.End);
        file.ReadExactly(last);
        return BinaryPrimitives.ReadUInt32LittleEndian(last);
    }

    public void Dispose()
    {
        parser.Dispose();
        reader.Dispose();
    }

    /// <summary>Reads the first line ahead, which tells the separator, and gives it back.</summary>
    sealed class HeaderAhead : TextReader
    {
        readonly TextReader rest;
        string ahead;

        public HeaderAhead(TextReader rest)
        {
            this.rest = rest;
            Line = Begin(rest);
            ahead = Line;
        }

        public string Line { get; }

        static string Begin(TextReader rest)
        {
            var line = new StringBuilder();
            while (line.Length < LongestField && rest.Read() is >= 0 and var c)
            {
                line.Append((char)c);
                if (c == '\n') break;
            }
            return line.ToString();
        }

        public override int Read(char[] buffer, int index, int count)
        {
            if (ahead.Length == 0) return rest.Read(buffer, index, count);
            var taken = Math.Min(count, ahead.Length);
            ahead.CopyTo(0, buffer, index, taken);
            ahead = ahead[taken..];
            return taken;
        }
    }
}
