using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Monitor.Tests;

/// <summary>Who may know whom, and how things are called. Folders are capabilities; each may use only those above it.</summary>
public partial class RulesTests
{
    const string Ours = "HotShop.Monitor";

    static readonly string[] order =
    [
        "Wire", "Modes", "Health", "Configuration", "Store", "Live", "Http", "Readings", "Wiring", "Logbook", "Fuel", "Pot", "Money",
        "Annealing", "Alarms", "Notifications", "Handover", "Reports", "History", "Broker", "Loop", "Sums", "Web", "Demo", "Commands",
    ];

    static readonly string top = Top();
    static readonly string source = Path.Combine(top, "src", "HotShop.Monitor");

    [GeneratedRegex(@"^\s*(?:global )?using (?:static )?HotShop\.Monitor\.(\w+)", RegexOptions.Multiline)]
    private static partial Regex Using();

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    static string Top()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "HotShop.Monitor.sln"))) folder = folder.Parent ?? throw new InvalidOperationException("no solution above the tests");
        return folder.FullName;
    }

    static IEnumerable<string> Sources(string folder) => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Where(f => !f[folder.Length..].Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"));

    /// <summary>The folder of a file of the service; null for the few at its root, which put it together.</summary>
    static string? FolderOf(string file)
    {
        var parts = Path.GetRelativePath(source, file).Split(Path.DirectorySeparatorChar);
        return parts.Length > 1 ? parts[0] : null;
    }

    static bool MayUse(string folder, string other) => folder == other || Array.IndexOf(order, other) < Array.IndexOf(order, folder);

    [Fact]
    public void Every_folder_has_its_place_in_the_order() =>
        Assert.Empty(Sources(source).Select(FolderOf).OfType<string>().Distinct().Except(order));

    [Fact]
    public void A_folder_names_only_folders_above_it() =>
        Assert.Empty(Sources(source).Where(f => FolderOf(f) is not null)
            .SelectMany(f => Using().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value).Where(other => !MayUse(FolderOf(f)!, other)).Select(other => $"{Path.GetRelativePath(source, f)} uses {other}")));

    // Names in a body can go round a using; signatures, fields and bases cannot hide.
    [Fact]
    public void No_type_is_made_of_types_of_a_folder_below_its_own() =>
        Assert.Empty(OwnTypes().SelectMany(t => Used(t).Where(u => FolderOf(u) is { } other && !MayUse(FolderOf(t)!, other)).Select(u => $"{t.FullName} uses {u.FullName}")).Distinct());

    static string? FolderOf(Type type) =>
        type.Namespace is { } name && name.StartsWith(Ours + ".", StringComparison.Ordinal) && type.Assembly == typeof(MonitorHost).Assembly ? name[(Ours.Length + 1)..].Split('.')[0] : null;

    static IEnumerable<Type> OwnTypes() => typeof(MonitorHost).Assembly.GetTypes().Where(t => FolderOf(t) is not null);

    static IEnumerable<Type> Used(Type type)
    {
        const BindingFlags all = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var named = type.GetFields(all).Select(f => f.FieldType)
            .Concat(type.GetMethods(all).SelectMany(Parts))
            .Concat(type.GetConstructors(all).SelectMany(c => Parameters(c).Concat(Locals(c))))
            .Concat(type.GetInterfaces()).Append(type.BaseType);
        return named.OfType<Type>().SelectMany(Flat);
    }

    static IEnumerable<Type?> Parts(MethodInfo method) => Parameters(method).Concat(Locals(method)).Append(method.ReturnType);

    static IEnumerable<Type> Parameters(MethodBase method) => method.GetParameters().Select(p => p.ParameterType);

    static IEnumerable<Type> Locals(MethodBase method) => method.GetMethodBody()?.LocalVariables.Select(l => l.LocalType) ?? [];

    static IEnumerable<Type> Flat(Type type) =>
        type.IsGenericType ? type.GetGenericArguments().SelectMany(Flat).Prepend(type.GetGenericTypeDefinition()) : type.HasElementType ? Flat(type.GetElementType()!) : [type];

    [Fact]
    public void Only_the_demo_knows_the_simulator() =>
        Assert.Empty(Sources(source).Where(f => FolderOf(f) != "Demo" && Path.GetFileName(f) != "DemoCommand.cs")
            .Where(f => File.ReadAllText(f).Contains("HotShop.Simulator", StringComparison.Ordinal)).Select(f => Path.GetRelativePath(source, f)));

    [Fact]
    public void The_simulator_knows_nothing_of_the_service() =>
        Assert.DoesNotContain("hotshop", typeof(Simulator.SimulatedStudio).Assembly.GetReferencedAssemblies().Select(a => a.Name));

    [Fact]
    public void Physics_references_nothing_of_ours() =>
        Assert.DoesNotContain(typeof(Thermocouple).Assembly.GetReferencedAssemblies().Select(a => a.Name!), n => n.StartsWith("hotshop", StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void A_namespace_equals_its_folder() =>
        Assert.Empty(new[] { "src/HotShop.Physics", "src/HotShop.Monitor", "simulator/HotShop.Simulator", "tests/HotShop.Monitor.Tests", "tests/HotShop.Physics.Tests" }
            .SelectMany(project => Sources(Path.Combine(top, project)).Select(file => (Project: project, File: file)))
            .Where(f => Path.GetFileName(f.File) != "Program.cs")
            .Select(f => (f.File, Said: Namespace().Match(File.ReadAllText(f.File)).Groups[1].Value,
                Wanted: (Path.GetFileName(f.Project) + "." + Path.GetDirectoryName(Path.GetRelativePath(Path.Combine(top, f.Project), f.File))!.Replace(Path.DirectorySeparatorChar, '.')).TrimEnd('.')))
            .Where(f => f.Said != f.Wanted).Select(f => $"{f.File}: {f.Said}"));

    [Fact]
    public void No_type_has_a_name_that_says_nothing() =>
        Assert.Empty(OwnTypes().Concat(typeof(Thermocouple).Assembly.GetTypes()).Concat(typeof(Simulator.SimulatedStudio).Assembly.GetTypes())
            .Where(t => !t.IsDefined(typeof(CompilerGeneratedAttribute)) && VagueName().IsMatch(t.Name) && t.Namespace?.StartsWith("HotShop", StringComparison.Ordinal) == true).Select(t => t.FullName));

    [GeneratedRegex("(Manager|Helpers?|Util|Utils|Utility|Utilities|Common|Service|Info)(`\\d)?$")]
    private static partial Regex VagueName();

    [Fact]
    public void No_file_is_longer_than_four_hundred_lines() =>
        Assert.DoesNotContain(new[] { "src", "simulator", "tests" }.SelectMany(f => Sources(Path.Combine(top, f))), f => File.ReadLines(f).Count() > 400);
}
