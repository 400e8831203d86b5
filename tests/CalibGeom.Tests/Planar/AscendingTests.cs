using CalibGeom.Planar;
using FsCheck;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

public class AscendingTests
{
    [Property]
    public void NumbersAreSortedEachOnce(int[] few, NormalFloat[] many)
    {
        int[] modest = [.. few.Select(n => n % 5)];
        Assert.Equal(modest.Distinct().Order(), Ascending.Of(modest));
        double[] all = [.. many.Select(n => n.Get), .. many.Select(n => Math.Round(n.Get))];
        Assert.Equal(all.Distinct().Order(), Ascending.Of(all));
    }

    [Property]
    public void PairsAreSortedEachOnce((int, int)[] pairs)
    {
        (int, int)[] modest = [.. pairs.Select(p => (p.Item1 % 3, p.Item2 % 3))];
        Assert.Equal(modest.Distinct().Order(), Ascending.Of(modest));
    }
}
