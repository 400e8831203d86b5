using System.Globalization;

namespace CalibGeom.Cli.Maps;

/// <summary>A peg and a hole of one's own and where they stand; without a place, anywhere on the plate.</summary>
internal sealed record MapJoint(double Peg, double Hole, (double X, double Y)? At)
{
    /// <summary>What was asked for; null when no joint was.</summary>
    /// <exception cref="InputException">A text is no such thing, or a place was given without a joint.</exception>
    internal static MapJoint? Read(string? sizes, string? at)
    {
        if (sizes is null && at is not null)
            throw new InputException(
                InputIds.Option,
                $"--at {at} says where a joint stands, but no joint is asked for. Give its sizes too: --for 20/20.2."
            );
        if (sizes is null)
            return null;
        double[] pair = Numbers(sizes, '/', "--for", "20/20.2");
        if (pair[0] <= 0 || pair[1] <= 0 || Math.Abs(pair[1] - pair[0]) > 4)
            throw new InputException(
                InputIds.Option,
                $"--for {sizes}: give the sizes of a peg and its hole in mm, above 0 and at most 4 mm apart."
            );
        if (at is null)
            return new MapJoint(pair[0], pair[1], null);
        double[] place = Numbers(at, ',', "--at", "40,-20");
        return new MapJoint(pair[0], pair[1], (place[0], place[1]));
    }

    private static double[] Numbers(string text, char separator, string option, string example)
    {
        string[] parts = text.Split(separator);
        var numbers = new double[2];
        bool sound =
            parts.Length == 2
            && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[0])
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[1])
            && numbers.All(n => double.IsFinite(n) && Math.Abs(n) <= 1000);
        return sound
            ? numbers
            : throw new InputException(InputIds.Option, $"{option} {text}: write two numbers such as {example}.");
    }
}
