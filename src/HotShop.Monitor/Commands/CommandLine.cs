using System.CommandLine;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Commands;

/// <summary>The commands. Exit status: 0 done; 1 failed while running; 2 wrong usage, configuration or input, one line per problem on standard error.</summary>
static class CommandLine
{
    public const int Done = 0, Failed = 1, WrongInput = 2;

    public static async Task<int> Run(string[] args, TimeProvider clock)
    {
        var root = new RootCommand("HotShop.Monitor watches the fires, the fuel and the glass of a hot-glass studio. It advises; it controls nothing and is no safety interlock.")
        {
            RunCommand.Make(clock), DemoCommand.Make(clock), InitCommand.Make(), CheckCommand.Make(),
            ImportCommand.Make(clock), ExportCommand.Make(clock), ReportCommand.Make(clock), BackupCommands.MakeBackup(clock), BackupCommands.MakeRestore(clock), ReplayCommand.Make(clock),
        };
        var parsed = root.Parse(args.Length == 0 ? ["--help"] : args);
        if (parsed.Errors.Count > 0)
        {
            // A wrong word explains itself; that a command is missing as well would only hide it.
            foreach (var error in parsed.Errors.Where(e => parsed.UnmatchedTokens.Count == 0 || !e.Message.StartsWith("Required command", StringComparison.Ordinal))) await Console.Error.WriteLineAsync($"hotshop: {error.Message} See 'hotshop --help'.");
            return WrongInput;
        }
        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (ConfigurationException wrong)
        {
            foreach (var problem in wrong.Problems) await Console.Error.WriteLineAsync(problem.ToString());
            return WrongInput;
        }
        catch (CsvFileException wrong)
        {
            await Console.Error.WriteLineAsync(wrong.Message);
            return WrongInput;
        }
        catch (StoreException wrong)
        {
            await Console.Error.WriteLineAsync(wrong.Message);
            return Failed;
        }
        catch (IOException wrong)
        {
            // Most often a port that is taken: Kestrel's message names it.
            await Console.Error.WriteLineAsync($"hotshop: {wrong.Message}");
            return Failed;
        }
        catch (UnauthorizedAccessException wrong)
        {
            await Console.Error.WriteLineAsync($"hotshop: {wrong.Message} Give the service's user the right to it.");
            return Failed;
        }
    }

    public static StudioPlan Plan(FileInfo file) => PlanBuilder.Build(ConfigurationFile.Read(file.FullName), file.DirectoryName!);

    public static Option<FileInfo> ConfigurationOption() => new("--config")
    {
        Description = "Configuration file",
        DefaultValueFactory = _ => new FileInfo(Environment.GetEnvironmentVariable("HOTSHOP_CONFIG") ?? ConfigurationFile.UsualName),
    };
}
