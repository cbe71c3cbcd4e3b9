namespace HotShop.Physics.Annealing;

/// <summary>Least squares of an excess temperature exp(a − k·t) through measured temperatures, for a room that is given.</summary>
/// <remarks>
/// Gauss-Newton from the straight line through ln(T − T_room), weighted by the square of the excess so that the noise stays one of temperature. What a wall of
/// layers leaves unexplained runs along the curve and does not average out: the covariance is widened by (1 + r)/(1 − r) for neighbours that correlate by r.
/// </remarks>
internal sealed class ExponentialFit
{
    const int Steps = 8;

    /// <summary>Residuals that hang together entirely would make the widening endless.</summary>
    const double MostCorrelation = 0.97;

    readonly double logExcess, varianceOfLog, varianceOfRate, covariance;

    ExponentialFit(double logExcess, double rate, double varianceOfLog, double varianceOfRate, double covariance, double residual) =>
        (this.logExcess, RatePerHour, this.varianceOfLog, this.varianceOfRate, this.covariance, ResidualKelvin) = (logExcess, rate, varianceOfLog, varianceOfRate, covariance, residual);

    /// <summary>k in 1/h, above 0.</summary>
    public double RatePerHour { get; }

    public double RateUncertainty => Math.Sqrt(varianceOfRate);

    /// <summary>Root mean square of the residuals, K.</summary>
    public double ResidualKelvin { get; }

    public double ExcessKelvin(double hours) => Math.Exp(logExcess - RatePerHour * hours);

    /// <summary>When the excess has come down to so many K.</summary>
    public double HoursTo(double excessKelvin) => (logExcess - Math.Log(excessKelvin)) / RatePerHour;

    /// <summary>Standard uncertainty of <see cref="HoursTo"/>, in hours: GUM (JCGM 100:2008), 5.2.2, with the correlation of both parameters.</summary>
    public double UncertaintyOfHoursTo(double excessKelvin)
    {
        var (byLog, byRate) = (1 / RatePerHour, -HoursTo(excessKelvin) / RatePerHour);
        return Math.Sqrt(Math.Max(0, byLog * byLog * varianceOfLog + byRate * byRate * varianceOfRate + 2 * byLog * byRate * covariance));
    }

    /// <returns>Null where no decay can be laid through the points.</returns>
    public static ExponentialFit? Of(double[] hours, double[] celsius, double roomCelsius)
    {
        var excess = celsius.Select(c => c - roomCelsius).ToArray();
        if (excess.Any(e => e <= 0) || Start(hours, excess) is not { } start) return null;
        var (a, k) = start;
        for (var step = 0; step < Steps; step++)
        {
            var (moveLog, moveRate) = Solve(Normal(hours, excess, a, k));
            (a, k) = (a + moveLog, k + moveRate);
            if (!double.IsFinite(a) || !(k > 0)) return null;
        }
        var residuals = hours.Zip(excess, (t, e) => e - Math.Exp(a - k * t)).ToArray();
        var variance = residuals.Sum(r => r * r) / (hours.Length - 2) * Widening(residuals);
        var n = Normal(hours, excess, a, k);
        var determinant = n.Aa * n.Kk - n.Ak * n.Ak;
        return new(a, k, variance * n.Kk / determinant, variance * n.Aa / determinant, -variance * n.Ak / determinant, Math.Sqrt(residuals.Sum(r => r * r) / hours.Length));
    }

    static (double LogExcess, double Rate)? Start(double[] hours, double[] excess)
    {
        double w = 0, wt = 0, wy = 0, wtt = 0, wty = 0;
        for (var i = 0; i < hours.Length; i++)
        {
            var (t, y, weight) = (hours[i], Math.Log(excess[i]), excess[i] * excess[i]);
            (w, wt, wy, wtt, wty) = (w + weight, wt + weight * t, wy + weight * y, wtt + weight * t * t, wty + weight * t * y);
        }
        var spread = w * wtt - wt * wt;
        if (!(spread > 0)) return null;
        var slope = (w * wty - wt * wy) / spread;
        return slope < 0 ? ((wy - slope * wt) / w, -slope) : null;
    }

    /// <summary>Sums of the normal equations: derivatives by a and k are f and −t·f.</summary>
    static (double Aa, double Ak, double Kk, double Ra, double Rk) Normal(double[] hours, double[] excess, double a, double k)
    {
        double aa = 0, ak = 0, kk = 0, ra = 0, rk = 0;
        for (var i = 0; i < hours.Length; i++)
        {
            var f = Math.Exp(a - k * hours[i]);
            var (byLog, byRate, residual) = (f, -hours[i] * f, excess[i] - f);
            (aa, ak, kk, ra, rk) = (aa + byLog * byLog, ak + byLog * byRate, kk + byRate * byRate, ra + byLog * residual, rk + byRate * residual);
        }
        return (aa, ak, kk, ra, rk);
    }

    static (double Log, double Rate) Solve((double Aa, double Ak, double Kk, double Ra, double Rk) n)
    {
        var determinant = n.Aa * n.Kk - n.Ak * n.Ak;
        return ((n.Ra * n.Kk - n.Rk * n.Ak) / determinant, (n.Rk * n.Aa - n.Ra * n.Ak) / determinant);
    }

    static double Widening(double[] residuals)
    {
        double own = 0, next = 0;
        for (var i = 0; i < residuals.Length; i++)
        {
            own += residuals[i] * residuals[i];
            if (i > 0) next += residuals[i] * residuals[i - 1];
        }
        var r = own > 0 ? Math.Clamp(next / own, 0, MostCorrelation) : 0;
        return (1 + r) / (1 - r);
    }
}
