using HotShop.EndToEnd.Tests.Broker;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>Makes the pictures of the documents: into docs/pictures with HOTSHOP_PICTURES=1, else into a folder that is thrown away.</summary>
[Collection("pages")]
public sealed class PicturesTests(Chromium chromium, ShownStudio studio)
{
    const long LargestBytes = 400_000;

    public static TheoryData<string, string, int, int> Pictures => new()
    {
        { "floor-wall", "/", 1920, 1080 }, { "floor", "/", 1280, 800 }, { "floor-phone", "/", 390, 844 }, { "pot-phone", "/pot", 390, 844 },
        { "health", "/health", 1280, 800 }, { "setup", "/setup", 1280, 800 }, { "alarms", "/alarms", 1280, 800 }, { "morning", "/morning", 1280, 900 }, { "morning-phone", "/morning", 390, 844 },
        { "sums", "/sums/door?shape=round&width=30&widthUnit=cm&wall=15&wallUnit=cm&inside=1150&insideUnit=C&open=25", 1280, 1000 }, { "sums-phone", "/sums/weight?shape=ball&diameter=7.3&diameterUnit=cm", 390, 844 },
    };

    [Theory, MemberData(nameof(Pictures))]
    public async Task Each_page_makes_a_picture_for_the_documents(string name, string path, int width, int height)
    {
        if (IsWanted) await studio.HasRun(TimeSpan.FromHours(27));   // late morning of the second day
        await using var visit = await chromium.Open(studio.Address + path, new Screen(name, width, height));
        await visit.Ready();
        await visit.Page.WaitForLoadStateAsync(LoadState.Load);
        await visit.Until("() => ![...document.querySelectorAll('.number, #strip text')].some(t => /…|no reading yet/.test(t.textContent))");
        await Keep(visit, name);
        visit.HasNoFaults();
    }

    static bool IsWanted => Environment.GetEnvironmentVariable("HOTSHOP_PICTURES") == "1";

    internal static async Task Keep(Visit visit, string name) => Keep(await visit.Page.ScreenshotAsync(), name);

    internal static void Keep(byte[] png, string name)
    {
        var folder = IsWanted ? Path.Combine(Repository.Root, "docs", "pictures") : Directory.CreateTempSubdirectory("hotshop-pictures-").FullName;
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, $"{name}.png");
        File.WriteAllBytes(file, png);
        Assert.InRange(new FileInfo(file).Length, 5_000, LargestBytes);
        if (!IsWanted) Directory.Delete(folder, recursive: true);
    }
}
