using System.Net;
using System.Text;
using HotShop.Monitor.Notifications.Mail;

namespace HotShop.Monitor.Handover;

/// <summary>The handover as a mail: complete as plain text, and the same words as a page without pictures for a phone's mail program.</summary>
static class HandoverLetter
{
    public static Letter Write(string key, HandoverWords words, Morning morning, Uri pages)
    {
        var link = new Uri(pages, $"morning?day={morning.Night.Morning:uuuu-MM-dd}");
        return new(key, words.Headline(morning), Text(words, morning, link), Html(words, morning, link));
    }

    static string Text(HandoverWords words, Morning morning, Uri link)
    {
        var text = new StringBuilder().AppendLine(words.Headline(morning)).AppendLine(words.Lede(morning)).AppendLine().AppendLine(words.Title(morning)).AppendLine(words.SpanSentence(morning));
        foreach (var section in words.Sections(morning))
        {
            text.AppendLine().AppendLine(section.Title);
            foreach (var line in section.Lines)
            {
                text.Append("- ").AppendLine(line.Text);
                if (line.More is { } more) text.Append("  ").AppendLine(more);
            }
            if (section.Note is { } note) text.AppendLine(note);
        }
        var questions = morning.Questions.Select(HandoverWords.Question).ToList();
        if (questions.Count > 0)
        {
            text.AppendLine().AppendLine("Yours to answer, on the page");
            foreach (var question in questions) text.Append("- ").AppendLine(question);
        }
        return text.AppendLine().AppendLine(link.ToString()).AppendLine().AppendLine(HandoverWords.Caution).ToString().ReplaceLineEndings("\n");
    }

    static string Html(HandoverWords words, Morning morning, Uri link)
    {
        var html = new StringBuilder("<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><meta name=\"color-scheme\" content=\"light dark\">")
            .Append("<title>").Append(E(words.Title(morning))).Append("</title></head><body style=\"margin:0 auto;max-width:36em;padding:12px;font:17px/1.4 system-ui,sans-serif\">");
        html.Append("<h1 style=\"font-size:24px;line-height:1.2;font-weight:400;margin:0 0 6px\">").Append(E(words.Headline(morning))).Append("</h1>");
        html.Append("<p style=\"margin:0 0 4px\">").Append(E(words.Lede(morning))).Append("</p><p style=\"margin:0 0 4px\">").Append(E(words.Title(morning))).Append("<br>").Append(E(words.SpanSentence(morning))).Append("</p>");
        foreach (var section in words.Sections(morning))
        {
            html.Append("<h2 style=\"font-size:18px;font-weight:600;margin:18px 0 4px\">").Append(E(section.Title)).Append("</h2><ul style=\"margin:0;padding-left:18px\">");
            foreach (var line in section.Lines)
                html.Append("<li style=\"margin:0 0 6px\">").Append(E(line.Text)).Append(line.More is { } more ? $"<br><span style=\"font-size:15px\">{E(more)}</span>" : "").Append("</li>");
            html.Append("</ul>");
            if (section.Note is { } note) html.Append("<p style=\"font-size:15px;margin:4px 0 0\">").Append(E(note)).Append("</p>");
        }
        var questions = morning.Questions.Select(HandoverWords.Question).ToList();
        if (questions.Count > 0) html.Append("<h2 style=\"font-size:18px;font-weight:600;margin:18px 0 4px\">Yours to answer, on the page</h2><ul style=\"margin:0;padding-left:18px\">").AppendJoin("", questions.Select(q => $"<li>{E(q)}</li>")).Append("</ul>");
        html.Append("<p style=\"margin:20px 0\"><a href=\"").Append(E(link.ToString())).Append("\">Open the morning page</a></p>");
        return html.Append("<p style=\"font-size:15px\">").Append(E(HandoverWords.Caution)).Append("</p></body></html>").ToString();
    }

    static string E(string text) => WebUtility.HtmlEncode(text);
}
