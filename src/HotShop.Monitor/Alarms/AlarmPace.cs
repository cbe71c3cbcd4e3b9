using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>
/// What silence is measured with. Devices, network and this program take real time: where the studio's clock runs fast, as in a demo,
/// a second of theirs is minutes of the studio's, and must not look like silence.
/// </summary>
/// <param name="LeastSilence">No periodic channel is silent before so long. Default 60 s; at least 5 real seconds.</param>
/// <param name="StartGrace">Allowed beside one interval after a start. Default 60 s; at least 20 real seconds.</param>
/// <param name="HeldUp">A clock that jumps by more than this shows that the service itself stood still: nothing was heard because nobody listened. Default 90 s; at least 3 real seconds.</param>
sealed record AlarmPace(Duration LeastSilence, Duration StartGrace, Duration HeldUp)
{
    public static readonly AlarmPace Real = ForSpeed(1);

    /// <param name="speed">Seconds of the studio's clock per real second; 1 outside demos.</param>
    public static AlarmPace ForSpeed(double speed) => new(
        Duration.FromSeconds(Math.Max(AlarmDefaults.SilentAtLeastSeconds, 5 * speed)), Duration.FromSeconds(Math.Max(60, 20 * speed)), Duration.FromSeconds(Math.Max(90, 3 * speed)));
}
