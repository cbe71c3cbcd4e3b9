using System.Text.Json;
using HotShop.Monitor.Web.Pages;
using HotShop.Monitor.Web.Pages.Entry;
using Xunit;

namespace HotShop.Monitor.Tests.Web;

public class PageTextTests
{
    static readonly string Scripts = Path.Combine(Root(), "src", "HotShop.Monitor", "wwwroot", "js");

    [Fact]
    public void The_table_of_heat_has_a_colour_for_every_ten_degrees_to_1400()
    {
        using var table = JsonDocument.Parse(new GlowTable().Json);
        var colours = table.RootElement.GetProperty("colours");

        Assert.Equal(141, colours.GetArrayLength());
        // Dark when cold, and 1150 °C as its own test of the physics has it.
        Assert.Equal("#000000", colours[2].GetString());
        Assert.Equal(HotShop.Physics.Radiation.Glow.Srgb(1150).Hex, colours[115].GetString());
    }

    [Theory, InlineData("password"), InlineData("owner"), InlineData("code"), InlineData("short"), InlineData("different"), InlineData("name")]
    public void Each_failed_form_has_a_sentence_that_says_what_to_do(string problem) => Assert.EndsWith(".", EntryProblems.Sentence(problem));

    [Fact]
    public void An_unknown_problem_in_the_address_is_never_echoed() => Assert.Null(EntryProblems.Sentence("<script>alert(1)</script>"));

    [Theory, InlineData("floor"), InlineData("morning"), InlineData("pot"), InlineData("meters"), InlineData("alarms"), InlineData("health"), InlineData("setup")]
    public void A_page_announces_exactly_the_scripts_it_will_ask_for(string page)
    {
        var needed = new HashSet<string>();
        Follow(page, needed);
        needed.Remove(page);

        Assert.Equal(needed.Order(StringComparer.Ordinal), ModuleList.Of(page).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_script_writes_markup_from_text()
    {
        foreach (var file in Directory.EnumerateFiles(Scripts, "*.js"))
            foreach (var forbidden in new[] { "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(" })
                Assert.False(File.ReadAllText(file).Contains(forbidden, StringComparison.Ordinal), $"{Path.GetFileName(file)} uses {forbidden}");
    }

    static void Follow(string module, HashSet<string> seen)
    {
        if (!seen.Add(module)) return;
        foreach (var line in File.ReadLines(Path.Combine(Scripts, $"{module}.js")).Where(l => l.StartsWith("import ", StringComparison.Ordinal)))
            Follow(line[(line.IndexOf("'./", StringComparison.Ordinal) + 3)..line.LastIndexOf(".js'", StringComparison.Ordinal)], seen);
    }

    static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "HotShop.Monitor.sln"))) folder = Path.GetDirectoryName(folder)!;
        return folder;
    }
}
