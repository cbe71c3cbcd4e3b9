using System.Diagnostics;
using System.Net.Sockets;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Broker;

/// <summary>A real Mosquitto with the settings of <c>deploy/mosquitto/hotshop.conf</c>, in a folder and on a port of its own.</summary>
sealed class Mosquitto : IAsyncDisposable
{
    public const string ServiceUser = "hotshop", ServicePassword = "glass-and-gas", DeviceUser = "furnace", DevicePassword = "fire-and-sand";

    readonly TemporaryFolder folder = new();
    Process? process;

    Mosquitto(bool isTls, string? aclInstead)
    {
        IsTls = isTls;
        folder.Write("acl", aclInstead ?? File.ReadAllText(Path.Combine(Repository.Root, "deploy/mosquitto/hotshop.acl")));
        foreach (var (user, password) in new[] { (ServiceUser, ServicePassword), (DeviceUser, DevicePassword) })
            Run("mosquitto_passwd", File.Exists(At("passwords")) ? ["-b", At("passwords"), user, password] : ["-b", "-c", At("passwords"), user, password]);
        if (isTls) Certificates.Write(folder.Path);
        folder.Write("service.password", ServicePassword + "\n");
        Directory.CreateDirectory(At("store"));
        folder.Write("mosquitto.conf", string.Join('\n', Configuration()));
    }

    public int Port { get; } = SomePlan.FreePort();
    public bool IsTls { get; }

    public string At(string name) => Path.Combine(folder.Path, name);

    /// <param name="aclInstead">Access rules in place of the deployed ones.</param>
    public static async Task<Mosquitto> Start(bool isTls = false, string? aclInstead = null)
    {
        var broker = new Mosquitto(isTls, aclInstead);
        await broker.StartAgain();
        return broker;
    }

    public async Task StartAgain()
    {
        process = Process.Start(new ProcessStartInfo(Find("mosquitto"), ["-c", At("mosquitto.conf")]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
        await Patience.Until(IsListening, "mosquitto listens");
    }

    /// <summary>SIGTERM: it saves its sessions and queues.</summary>
    public async Task Stop()
    {
        Run("kill", ["-TERM", $"{process!.Id}"]);
        await Patience.For(process.WaitForExitAsync());
    }

    /// <summary>SIGSTOP: the connection stands, and nobody answers any more, as when a cable is pulled.</summary>
    public void Freeze() => Run("kill", ["-STOP", $"{process!.Id}"]);

    public void Thaw() => Run("kill", ["-CONT", $"{process!.Id}"]);

    /// <summary>Publishes with the command-line client, as the device; one message a line.</summary>
    public void Publish(string topic, IEnumerable<string> lines, bool retain = false)
    {
        List<string> arguments = ["-h", "127.0.0.1", "-p", $"{Port}", "-u", DeviceUser, "-P", DevicePassword, "-i", "device", "-q", "1", "-t", topic, "-l"];
        if (retain) arguments.Add("-r");
        Run("mosquitto_pub", arguments, string.Join('\n', lines) + "\n");
    }

    /// <summary>The retained message of a topic.</summary>
    public string Retained(string topic) => Run("mosquitto_sub",
        ["-h", "127.0.0.1", "-p", $"{Port}", "-u", ServiceUser, "-P", ServicePassword, "-i", "reader", "-t", topic, "-C", "1", "-W", "10"]).Trim();

    /// <summary>The <c>broker</c> object for <see cref="SomePlan"/>.</summary>
    public string Options(string user = ServiceUser, string passwordFile = "service.password", string more = "") =>
        $$"""{ "mode": "outside", "host": "{{(IsTls ? "localhost" : "127.0.0.1")}}", "port": {{Port}}, "user": "{{user}}", "passwordFile": "{{passwordFile}}"{{more}} }""";

    public string Folder => folder.Path;

    IEnumerable<string> Configuration()
    {
        foreach (var line in File.ReadLines(Path.Combine(Repository.Root, "deploy/mosquitto/hotshop.conf")))
            yield return line.Split(' ')[0] switch
            {
                "listener" => $"listener {Port} {(IsTls ? "localhost" : "127.0.0.1")}",
                "password_file" => $"password_file {At("passwords")}",
                "acl_file" => $"acl_file {At("acl")}",
                "persistence_location" => $"persistence_location {At("store")}/",
                _ => line,
            };
        if (IsTls) yield return $"cafile {At("ca.pem")}\ncertfile {At("broker.pem")}\nkeyfile {At("broker.key")}";
        // Started as root it would change to a user that cannot read the test's folder.
        yield return $"user {Environment.UserName}";
    }

    bool IsListening()
    {
        Assert.False(process!.HasExited, $"mosquitto ended with {(process.HasExited ? process.ExitCode : 0)}; its configuration is {At("mosquitto.conf")}");
        try
        {
            using var socket = new TcpClient();
            socket.Connect(IsTls ? "localhost" : "127.0.0.1", Port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    /// <exception cref="FileNotFoundException">The program is not installed.</exception>
    public static string Find(string program)
    {
        string[] folders = [.. (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':'), "/usr/sbin", "/usr/local/sbin", "/usr/bin", "/bin"];
        return folders.Select(f => Path.Combine(f, program)).FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException($"'{program}' is needed by this test: install the packages mosquitto and mosquitto-clients (./test does)");
    }

    static string Run(string program, IEnumerable<string> arguments, string? input = null)
    {
        using var run = Process.Start(new ProcessStartInfo(Find(program), arguments) { RedirectStandardInput = true, RedirectStandardError = true, RedirectStandardOutput = true })!;
        if (input is not null) run.StandardInput.Write(input);
        run.StandardInput.Close();
        var output = run.StandardOutput.ReadToEnd();
        var errors = run.StandardError.ReadToEnd();
        Assert.True(run.WaitForExit(Patience.Limit), $"{program} does not end");
        Assert.True(run.ExitCode == 0, $"{program} ended with {run.ExitCode}: {errors}");
        return output;
    }

    public async ValueTask DisposeAsync()
    {
        if (process is { HasExited: false })
        {
            process.Kill();
            await process.WaitForExitAsync(CancellationToken.None);
        }
        process?.Dispose();
        folder.Dispose();
    }
}

/// <summary>Where the checkout is, seen from the tests' output folder.</summary>
static class Repository
{
    public static string Root { get; } = Find();

    static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HotShop.Monitor.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("the tests run outside the checkout");
    }
}
