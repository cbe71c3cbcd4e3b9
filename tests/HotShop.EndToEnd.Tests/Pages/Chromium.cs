using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>Debian's Chromium. Whatever a page asks of another host is noted and refused.</summary>
public sealed class Chromium : IAsyncLifetime
{
    IPlaywright playwright = null!;
    IBrowser browser = null!;

    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    internal Task<Visit> Open(string address, Screen screen, ColorScheme scheme = ColorScheme.Light, bool hasScript = true) =>
        Visit.Open(browser, address, screen, scheme, hasScript);

    public async ValueTask DisposeAsync()
    {
        await browser.DisposeAsync();
        playwright.Dispose();
    }
}

/// <summary>A screen that the pages must serve, in CSS pixels.</summary>
public sealed record Screen(string Name, int Width, int Height)
{
    public static readonly Screen Desk = new("desk", 1280, 800), Phone = new("phone", 390, 844), Narrow = new("narrow", 360, 740), Wall = new("wall", 1920, 1080);
}
