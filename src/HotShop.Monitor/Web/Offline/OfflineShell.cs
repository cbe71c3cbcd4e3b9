using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using HotShop.Monitor.Web.Pages;
using Microsoft.Extensions.FileProviders;

namespace HotShop.Monitor.Web.Offline;

/// <summary>
/// What a device keeps so that a page opens without the service: the pages without their numbers, their scripts and styles. One version for each build:
/// a browser takes the worker anew when its text has changed by a byte.
/// </summary>
sealed class OfflineShell(IWebHostEnvironment environment)
{
    const string Body = "worker.js";

    /// <summary>Path of a page, the key of its scripts, and the styles it needs beside those of every page.</summary>
    static readonly (string Path, string Key, string[] Styles)[] pages = [("/pot", "pot", ["pot", "sheet"]), ("/meters", "meters", ["meters"])];

    static readonly string[] everyPage = ["/css/tokens.css", "/css/frame.css", "/icon.svg", "/hotshop.webmanifest"];

    readonly Lazy<string> script = new(() => Script(environment.WebRootFileProvider));

    /// <summary>The worker, with its version and its list.</summary>
    public string Worker => script.Value;

    static List<string> Assets((string Path, string Key, string[] Styles)[] kept) =>
    [
        .. everyPage.Concat(kept.SelectMany(p => p.Styles.Select(s => $"/css/{s}.css").Concat(ModuleList.Of(p.Key).Append(p.Key).Select(m => $"/js/{m}.js")))).Distinct(),
    ];

    static string Script(IFileProvider files)
    {
        // One file that is not there would keep the worker from being taken at all: a page without its script is left out.
        var kept = pages.Where(p => files.GetFileInfo($"/js/{p.Key}.js").Exists).ToArray();
        var assets = Assets(kept);
        var list = JsonSerializer.Serialize(new { pages = kept.Select(p => p.Path), assets });
        var body = Text(typeof(OfflineShell).Assembly.GetManifestResourceStream(typeof(OfflineShell), Body)!);
        return $"const VERSION = '{Version(files, assets, list + body)}';\nconst SHELL = {list};\n{body}";
    }

    static string Version(IFileProvider files, List<string> assets, string own)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        // The pages' markup is compiled into the program: another program is another version.
        hash.AppendData(typeof(OfflineShell).Module.ModuleVersionId.ToByteArray());
        hash.AppendData(Encoding.UTF8.GetBytes(own));
        foreach (var asset in assets) hash.AppendData(Encoding.UTF8.GetBytes(Text(files.GetFileInfo(asset).CreateReadStream())));
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }

    static string Text(Stream stream)
    {
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
