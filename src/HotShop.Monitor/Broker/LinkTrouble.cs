using System.Net.Sockets;
using System.Security.Authentication;
using MQTTnet;

namespace HotShop.Monitor.Broker;

/// <summary>Says what is wrong with the connection to an outside broker, and what to do, in a sentence for the health page.</summary>
static class LinkTrouble
{
    public static string Of(MqttClientConnectResultCode refused, string? user) => refused switch
    {
        MqttClientConnectResultCode.NotAuthorized or MqttClientConnectResultCode.BadUserNameOrPassword =>
            $"it refuses {(user is null ? "a client without user" : $"user '{user}'")}: check broker.user, and the password in broker.passwordFile or {OutsideOptions.PasswordVariable}",
        MqttClientConnectResultCode.ClientIdentifierNotValid => "it refuses the client id: the broker's rules must allow ids that begin with 'hotshop-'",
        MqttClientConnectResultCode.ServerUnavailable or MqttClientConnectResultCode.ServerBusy => "it is too busy or not ready",
        MqttClientConnectResultCode.Banned => "it has banned this client: ask whoever runs the broker",
        _ => $"it refuses the connection ({refused})",
    };

    public static string Of(Exception failure)
    {
        for (var cause = failure; cause is not null; cause = cause.InnerException)
            switch (cause)
            {
                case AuthenticationException:
                    return $"its TLS certificate is not accepted ({cause.Message.TrimEnd('.')}): check broker.caFile, the host name in the certificate, and the clock";
                case SocketException { SocketErrorCode: SocketError.ConnectionRefused }:
                    return "nothing listens there: check that the broker runs, broker.host and broker.port";
                case SocketException { SocketErrorCode: SocketError.HostNotFound or SocketError.TryAgain or SocketError.NoData }:
                    return "its name is not known: check broker.host and the network";
                case SocketException socket:
                    return $"it cannot be reached ({socket.Message})";
                case OperationCanceledException or TimeoutException:
                    return "it does not answer within 10 s";
            }
        return $"the connection failed ({failure.Message.TrimEnd('.')})";
    }

    public static string Of(MqttClientDisconnectedEventArgs ended, string clientId) => ended.Reason switch
    {
        MqttClientDisconnectReason.SessionTakenOver =>
            $"another client has connected as '{clientId}' and taken the session over: is the service running twice with copies of one store? Only one may run",
        MqttClientDisconnectReason.ServerShuttingDown => "it is shutting down",
        MqttClientDisconnectReason.KeepAliveTimeout => "it has not heard from this service in time: check the network",
        MqttClientDisconnectReason.NotAuthorized => "it has withdrawn the permission: ask whoever runs the broker",
        MqttClientDisconnectReason.NormalDisconnection when ended.Exception is null =>
            $"it has closed the connection without a reason; if that repeats, another client may be using the id '{clientId}': only one service may run with one store",
        _ when ended.Exception is { } failure => $"the connection broke off: {Of(failure)}",
        var reason => $"it has closed the connection ({reason})",
    };
}
