using System.CommandLine;
using HotShop.Monitor.History.Backup;
using HotShop.Monitor.Store;
using NodaTime.Extensions;

namespace HotShop.Monitor.Commands;

/// <summary>A copy of the store as one file, and back. The copy is made beside a running service; a running service is never restored under.</summary>
static class BackupCommands
{
    public static Command MakeBackup(TimeProvider clock)
    {
        var file = new Argument<FileInfo>("FILE") { Description = "Where to; one that is there is replaced when the new one is complete" };
        var config = CommandLine.ConfigurationOption();
        var command = new Command("backup", "Makes a checked copy of the store, while the service runs or not") { file, config };
        command.SetAction(parsed =>
        {
            var plan = CommandLine.Plan(parsed.GetValue(config)!);
            var (target, store) = (parsed.GetValue(file)!.FullName, Path.Combine(plan.DataDirectory, StudioStore.FileName));
            if (!File.Exists(store)) throw new StoreException($"{store}: there is no store to copy; name the right configuration with --config");
            StoreCopy.Make(store, target, plan.Site, clock.GetUtcNow().ToInstant());
            var label = StoreCopy.Check(target);
            Console.WriteLine($"{target}: {StoreCopy.Size(target)}, sound; readings to {label.NewestReading?.ToString() ?? "none"}.");
            Console.WriteLine("  Not inside: the configuration file, pictures of meters (photos), passwords, the pairing of screens and keys. It does hold the names and numbers of the people as configured: keep it private.");
            return CommandLine.Done;
        });
        return command;
    }

    public static Command MakeRestore(TimeProvider clock)
    {
        var file = new Argument<FileInfo>("FILE") { Description = "A backup" };
        var config = CommandLine.ConfigurationOption();
        var command = new Command("restore", "Puts a backup in the place of the store; what was there is kept beside it") { file, config };
        command.SetAction(parsed =>
        {
            var plan = CommandLine.Plan(parsed.GetValue(config)!);
            var backup = parsed.GetValue(file)!.FullName;
            var label = StoreCopy.Check(backup);
            var kept = StoreReturn.From(backup, plan.DataDirectory, clock.GetUtcNow().ToInstant());
            Console.WriteLine($"{plan.DataDirectory}: restored from {backup}{(label.MadeAt is { } at ? $", made {at}" : "")}; readings to {label.NewestReading?.ToString() ?? "none"}.");
            if (kept is not null) Console.WriteLine($"  What was there is {kept}; delete it when all is well.");
            if (label.Site is { } site && site != plan.Site) Console.WriteLine($"  It is of the site '{site}', the configuration says '{plan.Site}': is it the right one?");
            return CommandLine.Done;
        });
        return command;
    }
}
