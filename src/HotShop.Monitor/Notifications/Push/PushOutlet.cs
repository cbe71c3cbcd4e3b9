using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Serialization;

namespace HotShop.Monitor.Notifications.Push;

/// <summary>The JSON a push server gets. Topic, title, message, priority (5 the most urgent), tags and click are understood by open-source push servers.</summary>
sealed record PushBody(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Topic,
    string Title, string Message, int Priority, IReadOnlyList<string> Tags, string Click, string Occurrence, int Sequence);

/// <summary>Posts JSON over HTTP. Redirects are not followed: a post that becomes a get is lost without a word.</summary>
sealed class PushOutlet(HttpMessageInvoker http, string baseDirectory, TimeSpan timeLimit) : IOutlet
{
    public async Task<SendResult> Send(OutletAddress to, OutgoingMessage message, CancellationToken stop)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(timeLimit);   // the network's own time, not the demo's
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, to.Options.Url) { Content = JsonContent.Create(Body(to, message)) };
            request.Headers.TryAddWithoutValidation("Idempotency-Key", $"\"{message.Key}\"");
            if (to.Options.TokenFile is { } file)
                request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", (await File.ReadAllTextAsync(Path.Combine(baseDirectory, file), limit.Token)).Trim());
            using var answer = await http.SendAsync(request, limit.Token);
            return Judge(answer.StatusCode, answer.ReasonPhrase);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return new SendResult.TryAgain(string.Create(CultureInfo.InvariantCulture, $"{Where(to)} did not answer within {timeLimit.TotalSeconds:0.#} s"), HasAnswered: false);
        }
        catch (HttpRequestException failure)
        {
            return new SendResult.TryAgain($"{Where(to)}: {failure.Message}", HasAnswered: false);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return new SendResult.TryAgain($"cannot read the token file '{to.Options.TokenFile}': {failure.Message}", HasAnswered: false);
        }
    }

    /// <summary>Which answers can be mended by waiting: 408, 425, 429 and everything the server blames on itself.</summary>
    internal static SendResult Judge(HttpStatusCode status, string? reason) => (int)status switch
    {
        >= 200 and < 300 => new SendResult.Accepted($"{(int)status} {reason}"),
        408 or 425 or 429 or >= 500 => new SendResult.TryAgain($"the push server answered {(int)status} {reason}", HasAnswered: true),
        >= 300 and < 400 => new SendResult.Refused($"the push server answered {(int)status} {reason}: it has moved, write its new address"),
        401 or 403 => new SendResult.Refused($"the push server answered {(int)status} {reason}: check the access token and the topic"),
        _ => new SendResult.Refused($"the push server answered {(int)status} {reason}: check its address"),
    };

    static PushBody Body(OutletAddress to, OutgoingMessage message) => new(
        to.Options.Topic, message.Title, $"{message.Text}\n{message.Link}", Urgency(message), [message.Kind.ToString().ToLowerInvariant()],
        message.Link.ToString(), message.Occurrence, message.Step);

    static int Urgency(OutgoingMessage message) => message.Kind switch
    {
        MessageKind.Call => message.Priority == 1 ? 5 : 4,
        MessageKind.Test => 4,
        _ => 2,   // good news wakes nobody
    };

    static string Where(OutletAddress to) => Uri.TryCreate(to.Options.Url, UriKind.Absolute, out var address) ? address.Authority : "the push server";
}
