namespace PlantWatch.Core.Chemistry;

/// <summary>Factor and solution of a small symmetric positive matrix, stored row by row; only the lower half is read.</summary>
internal static class Cholesky
{
    /// <summary>Replaces the lower half by its factor; false when the matrix is not positive.</summary>
    public static bool Factor(Span<double> a, int n)
    {
        for (var j = 0; j < n; j++)
        {
            for (var k = 0; k < j; k++) a[(j * n) + j] -= a[(j * n) + k] * a[(j * n) + k];
            if (!(a[(j * n) + j] > 0)) return false;
            var root = a[(j * n) + j] = Math.Sqrt(a[(j * n) + j]);
            for (var i = j + 1; i < n; i++)
            {
                for (var k = 0; k < j; k++) a[(i * n) + j] -= a[(i * n) + k] * a[(j * n) + k];
                a[(i * n) + j] /= root;
            }
        }

        return true;
    }

    /// <summary>Solves with the factor; the right side becomes the answer.</summary>
    public static void Solve(ReadOnlySpan<double> factor, int n, Span<double> x)
    {
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++) x[i] -= factor[(i * n) + k] * x[k];
            x[i] /= factor[(i * n) + i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++) x[i] -= factor[(k * n) + i] * x[k];
            x[i] /= factor[(i * n) + i];
        }
    }
}
