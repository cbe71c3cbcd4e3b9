using System.CommandLine;
using System.Reflection;
using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Commands;

/// <summary>Writes a commented starter configuration and its schema. Never overwrites.</summary>
static class InitCommand
{
    public static Command Make()
    {
        var folder = new Argument<DirectoryInfo>("DIR") { Description = "Folder to write into", DefaultValueFactory = _ => new DirectoryInfo(".") };
        var command = new Command("init", "Writes a starter hotshop.json, commented, and its JSON schema") { folder };
        command.SetAction(parsed => Write(parsed.GetValue(folder)!));
        return command;
    }

    static int Write(DirectoryInfo folder)
    {
        var files = new[] { (Name: ConfigurationFile.UsualName, Text: Starter()), (Name: ConfigurationSchema.FileName, Text: ConfigurationSchema.Text()) };
        var there = files.Where(f => File.Exists(Path.Combine(folder.FullName, f.Name))).ToList();
        if (there.Count > 0)
        {
            foreach (var (name, _) in there) Console.Error.WriteLine($"{Path.Combine(folder.FullName, name)}: is there already; move it away, or name another folder");
            return CommandLine.WrongInput;
        }
        folder.Create();
        foreach (var (name, text) in files)
        {
            File.WriteAllText(Path.Combine(folder.FullName, name), text);
            Console.WriteLine($"wrote {Path.Combine(folder.FullName, name)}");
        }
        Console.WriteLine("Describe your studio in it, then: hotshop check, hotshop run");
        return CommandLine.Done;
    }

    internal static string Starter()
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream("HotShop.Monitor.Configuration.starter.jsonc")!);
        return reader.ReadToEnd();
    }
}
