using System.Security.Cryptography.X509Certificates;
using HotShop.Monitor.Configuration;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace HotShop.Monitor.Broker;

/// <summary>How to connect to the outside broker, read from configuration, files and environment once at start.</summary>
sealed class OutsideOptions
{
    /// <summary>Wins over <c>broker.passwordFile</c>.</summary>
    public const string PasswordVariable = "HOTSHOP_BROKER_PASSWORD";

    /// <summary>Seven days: a service that comes back within a week finds what was sent meanwhile, as far as the broker's own limits allow.</summary>
    const uint SessionExpirySeconds = 7 * 24 * 3600;

    /// <summary>Most messages in flight unacknowledged: enough to fill a commit, few enough to send again.</summary>
    public const ushort MostInFlight = 1000;

    readonly BrokerOptions options;
    readonly string? password;
    readonly X509Certificate2Collection? authorities;
    readonly string serviceTopic;

    OutsideOptions(StudioPlan plan, string? password, X509Certificate2Collection? authorities)
    {
        (options, this.password, this.authorities) = (plan.Configuration.Broker, password, authorities);
        serviceTopic = MqttOutTopics.Service(plan);
    }

    public string Address => $"{options.Host}:{options.Port}";

    /// <exception cref="ConfigurationException">The password or the certificate authority cannot be read.</exception>
    public static OutsideOptions Read(StudioPlan plan)
    {
        var broker = plan.Configuration.Broker;
        var problems = new List<ConfigurationProblem>();
        var password = Environment.GetEnvironmentVariable(PasswordVariable);
        if (string.IsNullOrEmpty(password) && broker.PasswordFile is { } file) password = SecretFile.Read(file, plan.BaseDirectory, "broker.passwordFile", problems);
        var authorities = broker.CaFile is { } caFile ? Authorities(Path.GetFullPath(caFile, plan.BaseDirectory), problems) : null;
        return problems.Count == 0 ? new OutsideOptions(plan, password, authorities) : throw new ConfigurationException(problems);
    }

    public MqttClientOptions Build(string clientId, bool isVersion5)
    {
        var builder = new MqttClientOptionsBuilder().WithTcpServer(options.Host!, options.Port).WithClientId(clientId)
            .WithKeepAlivePeriod(TimeSpan.FromSeconds(20)).WithTimeout(TimeSpan.FromSeconds(10))
            .WithWillTopic(serviceTopic).WithWillPayload(MqttOutTopics.Offline).WithWillRetain().WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce);
        builder = isVersion5
            ? builder.WithProtocolVersion(MqttProtocolVersion.V500).WithCleanStart(false).WithSessionExpiryInterval(SessionExpirySeconds).WithReceiveMaximum(MostInFlight)
            : builder.WithProtocolVersion(MqttProtocolVersion.V311).WithCleanSession(false);
        if (options.User is { } user) builder = builder.WithCredentials(user, password ?? "");
        if (options.Tls) builder = builder.WithTlsOptions(Tls);
        return builder.Build();
    }

    void Tls(MqttClientTlsOptionsBuilder tls)
    {
        tls.UseTls().WithTargetHost(options.Host!);
        // A studio's own authority publishes no revocation list; asking for one would refuse every certificate.
        if (authorities is not null) tls.WithTrustChain(authorities).WithRevocationMode(X509RevocationMode.NoCheck);
    }

    static X509Certificate2Collection? Authorities(string path, List<ConfigurationProblem> problems)
    {
        var found = new X509Certificate2Collection();
        try
        {
            found.ImportFromPemFile(path);
            if (found.Count > 0) return found;
            problems.Add(new("broker.caFile", $"{path} holds no certificate", "name the PEM file of the certificate authority that signed the broker's certificate"));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or System.Security.Cryptography.CryptographicException)
        {
            problems.Add(new("broker.caFile", $"{path} cannot be read ({failure.Message.TrimEnd('.')})", "name the PEM file of the certificate authority that signed the broker's certificate"));
        }
        return null;
    }
}
