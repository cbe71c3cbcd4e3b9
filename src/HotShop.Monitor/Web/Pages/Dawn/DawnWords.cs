using System.Text;
using HotShop.Monitor.Handover;
using NodaTime;

namespace HotShop.Monitor.Web.Pages.Dawn;

/// <summary>Stories beside the strip, each at its moment or as near as there is room.</summary>
internal static class DawnWords
{
    const double LineHeight = 17, Between = 7, LetterWidth = 7.3;
    const int Most = 9;

    sealed record Block(DawnStory Story, double At, List<(string Words, bool IsMore)> Lines)
    {
        public double Height => Lines.Count * LineHeight + Between;

        public double Top { get; set; }
    }

    /// <summary>Down a phone: words to the right of the lanes, tied to their moment by a dotted line.</summary>
    public static void Beside(StringBuilder svg, DawnPlane plane, Handover.Morning m, IReadOnlyList<DawnStory> stories, double left, double right, DateTimeZone zone)
    {
        var blocks = Chosen(stories, plane).Select(s => new Block(s, plane.Along(s.At), Lines(s, right - left - 8, zone))).ToList();
        Arrange(blocks, plane.Start - 14, plane.End + 14, plane.Along(m.Night.To));
        foreach (var block in blocks)
        {
            var lane = DawnStrip.Index(m, block.Story.Appliance);
            var (x, y) = (left + (block.Story.Priority is null ? 0 : 14), block.Top + LineHeight * 0.75);
            var start = lane < 0 ? plane.Lane(m.Appliances.Count - 1) + plane.Half + 4 : plane.Lane(lane) + plane.Half + 7;
            svg.Append(DawnPlane.Number($"<path class=\"hair\" stroke-dasharray=\"2 3\" d=\"M{start:0.#},{block.At:0.#}H{left - 10:0.#}L{left - 3:0.#},{y - 5:0.#}\"/>"));
            if (block.Story.Priority is { } priority) svg.Append(DawnMarks.Priority(priority, left + 3, y - 5, 0.55));
            if (lane >= 0 && IsTriangle(block.Story)) DawnMarks.Triangle(svg, plane, lane, block.At, block.Story.IsExpected);
            for (var i = 0; i < block.Lines.Count; i++)
                DawnStrip.Words(svg, x, y + i * LineHeight, block.Lines[i].Words, block.Lines[i].IsMore ? "dim" : "", "start", block.Lines[i].IsMore ? 14 : 15.5);
        }
    }

    /// <summary>Across a wall: the moment of each trouble above its lanes; the other words are in the list below.</summary>
    public static void Above(StringBuilder svg, DawnPlane plane, Handover.Morning m, IReadOnlyList<DawnStory> stories, DateTimeZone zone)
    {
        var taken = double.NegativeInfinity;
        foreach (var story in stories.Where(s => s.At >= plane.From && s.At <= plane.To))
        {
            var (along, lane) = (plane.Along(story.At), DawnStrip.Index(m, story.Appliance));
            if (lane >= 0 && IsTriangle(story)) DawnMarks.Triangle(svg, plane, lane, along, story.IsExpected);
            if (story.Priority is not { } priority) continue;
            svg.Append(DawnMarks.Priority(priority, along, lane < 0 ? 36 : plane.Lane(lane) - plane.Half - 12, 0.62));
            if (along - taken < 52) continue;
            DawnStrip.Words(svg, Math.Min(along, plane.End - 22), 16, DawnStrip.Clock(story.At, zone), "dim", "middle", 15);
            taken = along;
        }
    }

    static bool IsTriangle(DawnStory story) => story.Priority is null && (story.IsExpected || story.Text.Contains("ready", StringComparison.Ordinal) || story.Text.Contains("below", StringComparison.Ordinal));

    /// <summary>Troubles first, then what is expected, then the rest, as many as there is room for.</summary>
    static IEnumerable<DawnStory> Chosen(IReadOnlyList<DawnStory> stories, DawnPlane plane) => stories.Where(s => s.At >= plane.From && s.At <= plane.To)
        .OrderBy(s => s.Priority is not null ? 0 : s.IsExpected || s.Text.Contains("no reading", StringComparison.Ordinal) ? 1 : 2).Take(Most).OrderBy(s => s.At);

    static List<(string, bool)> Lines(DawnStory story, double width, DateTimeZone zone)
    {
        var room = (int)((width - (story.Priority is null ? 0 : 14)) / LetterWidth);
        List<(string, bool)> lines = [.. Wrapped($"{DawnStrip.Clock(story.At, zone)} {story.Text}", room, 2).Select(l => (l, false))];
        if (story.More is { } more) lines.AddRange(Wrapped(more, room + 3, 2).Select(l => (l, true)));
        return lines;
    }

    static IEnumerable<string> Wrapped(string text, int room, int most)
    {
        var (line, count) = ("", 0);
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > room)
            {
                if (++count == most)
                {
                    yield return line + " …";
                    yield break;
                }
                yield return line;
                line = word;
            }
            else line = line.Length == 0 ? word : $"{line} {word}";
        }
        yield return line;
    }

    /// <summary>Each where it belongs, pushed down by the one before, and all pushed up from the bottom. The line for now is crossed by no words.</summary>
    static void Arrange(List<Block> blocks, double top, double bottom, double now)
    {
        var free = top;
        foreach (var block in blocks)
        {
            block.Top = Math.Max(free, block.At - LineHeight * 0.75);
            if (block.Top < now && block.Top + block.Height > now) block.Top = block.Story.IsExpected ? now + 2 : Math.Max(free, now - block.Height - 2);
            free = block.Top + block.Height;
        }
        var limit = bottom;
        for (var i = blocks.Count - 1; i >= 0 && blocks[i].Top + blocks[i].Height > limit; i--)
        {
            blocks[i].Top = limit - blocks[i].Height;
            limit = blocks[i].Top;
        }
    }
}
