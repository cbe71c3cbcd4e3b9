namespace HotShop.Monitor.Readings;

/// <summary>A reading of a file, in the unit it is stored in.</summary>
/// <param name="Tag">The importer's own mark, e.g. the line it stood on.</param>
readonly record struct ImportedRow(long AtMicroseconds, double Value, ReadingMarks Marks, long Tag);

/// <summary>What became of an imported row.</summary>
enum ImportedResult { Added, Known, Replaced, Conflict, Closed }
