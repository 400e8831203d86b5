namespace CalibGeom.Plates;

/// <summary>
/// The exact Euclidean distance transform of cells, by lower envelopes of parabolas along columns and rows
/// (Felzenszwalb and Huttenlocher, Distance Transforms of Sampled Functions, Theory of Computing 8, 2012).
/// </summary>
internal static class DistanceTransform
{
    /// <summary>
    /// For each cell, the distance from its middle to the middle of the nearest marked cell, in cells; infinite when
    /// none is marked.
    /// </summary>
    internal static float[] Of(int columns, int rows, Func<int, int, bool> marked)
    {
        var field = new float[columns * rows];
        for (int row = 0; row < rows; row++)
        for (int column = 0; column < columns; column++)
            field[row * columns + column] = marked(column, row) ? 0 : float.PositiveInfinity;
        var line = new Line(Math.Max(columns, rows));
        for (int column = 0; column < columns; column++)
            line.Sweep(field, column, columns, rows);
        for (int row = 0; row < rows; row++)
            line.Sweep(field, row * columns, 1, columns);
        for (int i = 0; i < field.Length; i++)
            field[i] = MathF.Sqrt(field[i]);
        return field;
    }

    private sealed class Line(int length)
    {
        private readonly float[] source = new float[length];
        private readonly int[] roots = new int[length];
        private readonly double[] starts = new double[length];

        internal void Sweep(float[] field, int offset, int stride, int count)
        {
            int top = -1;
            for (int i = 0; i < count; i++)
            {
                float value = source[i] = field[offset + i * stride];
                if (float.IsPositiveInfinity(value))
                    continue;
                double start = double.NegativeInfinity;
                while (top >= 0 && (start = Meeting(roots[top], i)) <= starts[top])
                    top--;
                top++;
                (roots[top], starts[top]) = (i, top == 0 ? double.NegativeInfinity : start);
            }
            if (top < 0)
                return;
            for (int i = 0, k = 0; i < count; i++)
            {
                while (k < top && starts[k + 1] < i)
                    k++;
                double away = i - roots[k];
                field[offset + i * stride] = (float)(away * away + source[roots[k]]);
            }
        }

        /// <summary>Where the parabola rooted at the later cell falls below that of the earlier one.</summary>
        private double Meeting(int earlier, int later) =>
            (source[later] + (double)later * later - source[earlier] - (double)earlier * earlier)
            / (2.0 * (later - earlier));
    }
}
