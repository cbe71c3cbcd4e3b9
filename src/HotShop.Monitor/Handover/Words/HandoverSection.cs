namespace HotShop.Monitor.Handover.Words;

/// <summary>One thing that is handed over.</summary>
/// <param name="Text">A sentence or its beginning; complete without <paramref name="More"/>.</param>
/// <param name="Priority">1 to 3 where it is a trouble: shown as the shape with its digit.</param>
sealed record HandoverLine(string Text, string? More = null, int? Priority = null);

/// <summary>Lines that belong together. Page and mail show the same.</summary>
sealed record HandoverSection(string Id, string Title, IReadOnlyList<HandoverLine> Lines, string? Note = null);
