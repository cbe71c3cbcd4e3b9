namespace HotShop.Physics.Uncertainty;

/// <summary>How an error is spread about nothing.</summary>
public enum Shape
{
    /// <summary>A mean of readings, a calibration certificate, a sum of many small things.</summary>
    Normal,

    /// <summary>Anywhere within limits alike: a tolerance, an accuracy class, a rounded display.</summary>
    Rectangular,

    /// <summary>Within limits, and rather near the middle: the sum of two rectangles of one width.</summary>
    Triangular,
}
