using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>Whether people work on the day that follows a night: then glass is charged and cooked, and the gas is another.</summary>
enum NightKind { BeforeWork, BeforeRest, NotKnown }

/// <summary>The night before a morning.</summary>
/// <param name="Morning">Day of the morning in the studio's zone.</param>
/// <param name="From">End of the last work of the evening before, or the configured evening.</param>
/// <param name="To">Now, or noon of the morning's day where that has passed.</param>
/// <param name="IsEndOfWorkLogged">The log tells when work ended.</param>
/// <param name="GasFrom">First whole hour of the night: gas is compared by whole hours.</param>
/// <param name="GasTo">Last whole hour up to the hour of the handover.</param>
sealed record Night(LocalDate Morning, Instant From, Instant To, bool IsEndOfWorkLogged, Instant GasFrom, Instant GasTo, NightKind Kind)
{
    public Duration Length => To - From;
}
