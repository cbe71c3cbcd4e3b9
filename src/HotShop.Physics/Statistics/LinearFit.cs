using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace HotShop.Physics.Statistics;

/// <summary>
/// Least squares of a value on regressors, by QR of the scaled columns: normal equations would lose half of the digits where regressors
/// resemble each other.
/// </summary>
/// <remarks>
/// Checked against the certified values of NIST StRD, sets Norris and Longley. Standard uncertainties by <see cref="Covariance"/> take
/// the residuals as independent and of one size; <see cref="NeweyWest"/> takes neither.
/// </remarks>
public sealed class LinearFit
{
    readonly double[][] rows;

    LinearFit(double[][] rows, double[] coefficients, double[] residuals, double[][] inverse, double centredSumOfSquares)
    {
        (this.rows, Coefficients, Residuals, Inverse) = (rows, coefficients, residuals, inverse);
        ResidualSumOfSquares = residuals.Sum(r => r * r);
        DegreesOfFreedom = rows.Length - coefficients.Length;
        RSquared = centredSumOfSquares > 0 ? 1 - ResidualSumOfSquares / centredSumOfSquares : 1;
        Covariance = Scaled(inverse, ResidualSumOfSquares / DegreesOfFreedom);
    }

    /// <summary>In the value's unit per unit of the regressor.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Value minus line, in the order of the rows.</summary>
    public IReadOnlyList<double> Residuals { get; }

    public double ResidualSumOfSquares { get; }

    /// <summary>Rows less coefficients, 1 or more.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>√(residual sum of squares / degrees of freedom), in the value's unit.</summary>
    public double ResidualStandardDeviation => Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom);

    /// <summary>Share of the squares about the mean that the line explains; means what it says only where a column is constant.</summary>
    public double RSquared { get; }

    /// <summary>Covariance of the coefficients for independent residuals of one size.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Covariance { get; }

    /// <summary>Inverse of XᵀX.</summary>
    double[][] Inverse { get; }

    /// <summary>Fits a value to regressors.</summary>
    /// <param name="rows">Regressors of each value, all of one length; a constant, where wanted, is a column of ones.</param>
    /// <param name="values">As many as rows, and more than regressors.</param>
    /// <returns><see langword="null"/> where the regressors do not determine the line: one of them is a mix of the others, or there are too
    /// few values.</returns>
    public static LinearFit? Of(IReadOnlyList<double[]> rows, IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(values);
        if (rows.Count != values.Count) throw new ArgumentException($"{rows.Count} rows of regressors for {values.Count} values", nameof(values));
        if (rows.Count == 0 || rows.Count <= rows[0].Length) return null;
        if (rows.Any(r => r.Length != rows[0].Length || !r.All(double.IsFinite)) || !values.All(double.IsFinite))
            throw new ArgumentException("regressors and values must be finite and each row of one length", nameof(rows));

        var x = Matrix<double>.Build.DenseOfRowArrays(rows);
        var scales = x.ColumnNorms(2);
        if (scales.Any(s => s == 0)) return null;
        var qr = x.MapIndexed((_, j, value) => value / scales[j]).QR(QRMethod.Thin);
        if (IsSingular(qr.R)) return null;
        var y = Vector<double>.Build.DenseOfEnumerable(values);
        var scaled = qr.R.Solve(qr.Q.TransposeThisAndMultiply(y));
        var coefficients = scaled.MapIndexed((j, b) => b / scales[j]).ToArray();
        var residuals = rows.Zip(values, (row, value) => value - Dot(row, coefficients)).ToArray();
        var inverseR = qr.R.Inverse();
        var inverse = inverseR.TransposeAndMultiply(inverseR).MapIndexed((i, j, v) => v / scales[i] / scales[j]).ToRowArrays();
        var mean = values.Average();
        return new LinearFit([.. rows], coefficients, residuals, inverse, values.Sum(v => (v - mean) * (v - mean)));
    }

    /// <summary>The straight line through points: constant and slope.</summary>
    /// <inheritdoc cref="Of(IReadOnlyList{double[]}, IReadOnlyList{double})"/>
    public static LinearFit? Line(IReadOnlyList<double> x, IReadOnlyList<double> y) => Of([.. x.Select(value => new[] { 1, value })], y);

    /// <summary>A coefficient with its standard uncertainty for independent residuals; its 95 % interval is Student's.</summary>
    public Estimate Coefficient(int index) => ByStudent(new(Coefficients[index], Math.Sqrt(Covariance[index][index])));

    /// <summary>The line at regressors, with the standard uncertainty of the line itself; its 95 % interval is Student's.</summary>
    public Estimate At(params double[] row) => ByStudent(Combined(row, Covariance));

    /// <summary>A further value at regressors: the line's uncertainty and a residual's scatter; its 95 % interval is Student's.</summary>
    public Estimate Next(params double[] row)
    {
        var line = Combined(row, Covariance);
        return ByStudent(line with { StandardUncertainty = double.Hypot(line.StandardUncertainty, ResidualStandardDeviation) });
    }

    /// <summary>A mix of the coefficients with its standard uncertainty under a covariance of them.</summary>
    public Estimate Combined(IReadOnlyList<double> weights, IReadOnlyList<IReadOnlyList<double>> covariance)
    {
        ArgumentNullException.ThrowIfNull(weights);
        ArgumentNullException.ThrowIfNull(covariance);
        double value = 0, variance = 0;
        for (var i = 0; i < weights.Count; i++)
        {
            value += weights[i] * Coefficients[i];
            for (var j = 0; j < weights.Count; j++) variance += weights[i] * weights[j] * covariance[i][j];
        }
        return new Estimate(value, Math.Sqrt(Math.Max(0, variance)));
    }

    /// <summary>
    /// Covariance of the coefficients where residuals may differ in size and remember their neighbours (Newey and West 1987, Bartlett's
    /// weights), times n/(n − p) for small samples.
    /// </summary>
    /// <param name="times">When each row was, in steps, ascending: rows missing between neighbours count as distance.</param>
    /// <param name="lags">Steps after which residuals have forgotten each other; 0 gives White's covariance.</param>
    public IReadOnlyList<IReadOnlyList<double>> NeweyWest(IReadOnlyList<int> times, int lags)
    {
        ArgumentNullException.ThrowIfNull(times);
        ArgumentOutOfRangeException.ThrowIfNegative(lags);
        var size = Coefficients.Count;
        var meat = Matrix<double>.Build.Dense(size, size);
        for (var i = 0; i < rows.Length; i++)
            for (var j = i; j >= 0 && times[i] - times[j] <= lags; j--)
            {
                var weight = Residuals[i] * Residuals[j] * (1 - (times[i] - times[j]) / (lags + 1.0));
                for (var a = 0; a < size; a++)
                    for (var b = 0; b < size; b++)
                        meat[a, b] += weight * (i == j ? rows[i][a] * rows[i][b] : rows[i][a] * rows[j][b] + rows[j][a] * rows[i][b]);
            }
        var bread = Matrix<double>.Build.DenseOfRowArrays(Inverse);
        return Scaled((bread * meat * bread).ToRowArrays(), (double)rows.Length / DegreesOfFreedom);
    }

    /// <summary>Correlation of residuals with the residual one step before, −1 to 1; 0 where no two rows are neighbours.</summary>
    /// <inheritdoc cref="NeweyWest"/>
    public double ResidualCorrelation(IReadOnlyList<int> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        double product = 0, first = 0, second = 0;
        for (var i = 1; i < rows.Length; i++)
            if (times[i] - times[i - 1] == 1)
                (product, first, second) = (product + Residuals[i] * Residuals[i - 1], first + Residuals[i] * Residuals[i], second + Residuals[i - 1] * Residuals[i - 1]);
        return first > 0 && second > 0 ? product / Math.Sqrt(first * second) : 0;
    }

    Estimate ByStudent(Estimate of) => of.WithHalfWidth95(Quantiles.TwoSided(Quantiles.Level, DegreesOfFreedom) * of.StandardUncertainty);

    static bool IsSingular(Matrix<double> r)
    {
        var diagonal = r.Diagonal().PointwiseAbs();
        // Columns have length 1: what is left of one after the others is its part that they do not explain. Below half of a double's digits it is rounding.
        return diagonal.Minimum() < Math.Sqrt(Precision.DoublePrecision);
    }

    static double Dot(double[] row, double[] coefficients)
    {
        var sum = 0.0;
        for (var i = 0; i < row.Length; i++) sum += row[i] * coefficients[i];
        return sum;
    }

    static double[][] Scaled(double[][] matrix, double factor) => [.. matrix.Select(row => row.Select(value => value * factor).ToArray())];
}
