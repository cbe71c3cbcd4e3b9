using MathNet.Numerics.LinearAlgebra;

namespace HotShop.Checks.Statistics;

/// <summary>Rows made up so that their sums of products are those of a set of measurements: a fit of least squares cannot tell the two apart.</summary>
static class Alike
{
    /// <param name="sums">Of all products of the columns, symmetric.</param>
    /// <param name="count">Rows in the set of measurements: as many come back, most of them empty.</param>
    public static double[][] Rows(double[][] sums, int count)
    {
        var root = Matrix<double>.Build.DenseOfRowArrays(sums).Cholesky().Factor.Transpose();
        return [.. Enumerable.Range(0, count).Select(i => i < root.RowCount ? root.Row(i).ToArray() : new double[root.ColumnCount])];
    }
}
