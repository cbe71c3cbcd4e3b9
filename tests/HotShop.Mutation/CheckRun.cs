using System.Collections;
using System.Reflection;
using System.Runtime.Loader;
using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>What the checks said of a library.</summary>
/// <param name="IsRed">Whether one was not met.</param>
/// <param name="By">The first that was not.</param>
/// <param name="Unreadable">Whether it failed because a table could not be read at all.</param>
readonly record struct CheckVerdict(bool IsRed, string By, bool Unreadable = false);

/// <summary>Runs the checks against an altered library, each time in a load context of its own, so that nothing computed before is remembered.</summary>
static class CheckRun
{
    /// <param name="library">The library's image.</param>
    /// <param name="checks">The checks' image.</param>
    /// <param name="first">The case to begin with; the one that told the last number of the file is a good guess.</param>
    public static CheckVerdict Of(byte[] library, byte[] checks, string? first)
    {
        var context = new Altered(library, checks);
        try
        {
            var all = context.LoadFromAssemblyName(new("HotShop.Checks")).GetType("HotShop.Checks.Topic", throwOnError: true)!.GetProperty("All")!;
            var cases = ((IEnumerable)all.GetValue(null)!).Cast<object>().SelectMany(Cases).ToList();
            if (cases.Count == 0) return new(false, "");
            var type = cases[0].Check.GetType();
            var (what, holds) = (type.GetProperty("What")!, type.GetProperty("Holds")!);
            foreach (var (topic, check) in cases.OrderBy(c => Name(c) == first ? 0 : 1))
                if (!Holds(holds, check, out var unreadable)) return new(true, $"{topic}: {what.GetValue(check)}", unreadable);
            return new(false, "");

            string Name((string Topic, object Check) c) => $"{c.Topic}: {what.GetValue(c.Check)}";
        }
        catch (TargetInvocationException failed)
        {
            return new(true, "the checks cannot be set up", IsUnreadable(failed));
        }
        finally
        {
            context.Unload();
        }
    }

    static IEnumerable<(string Topic, object Check)> Cases(object topic)
    {
        var name = (string)topic.GetType().GetProperty("Name")!.GetValue(topic)!;
        return ((IEnumerable)topic.GetType().GetProperty("Checks")!.GetValue(topic)!).Cast<object>().Select(check => (name, check));
    }

    static bool Holds(PropertyInfo holds, object check, out bool unreadable)
    {
        unreadable = false;
        try
        {
            return (bool)holds.GetValue(check)!;
        }
        catch (TargetInvocationException failed)
        {
            unreadable = IsUnreadable(failed);
            return false;
        }
    }

    static bool IsUnreadable(Exception failed)
    {
        for (var e = failed; e is not null; e = e.InnerException!)
            if (e.GetType().FullName == typeof(JsonException).FullName) return true;
        return false;
    }

    sealed class Altered(byte[] library, byte[] checks) : AssemblyLoadContext("altered", isCollectible: true)
    {
        protected override Assembly? Load(AssemblyName assemblyName) => assemblyName.Name switch
        {
            "HotShop.Physics" => LoadFromStream(new MemoryStream(library)),
            "HotShop.Checks" => LoadFromStream(new MemoryStream(checks)),
            _ => null,
        };
    }
}
