using CalibGeom.Planar;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

/// <summary>Pairs of indices are numbered as a dictionary would number them.</summary>
public class EdgeTableTests
{
    [Property(MaxTest = 200)]
    public void PairsAreNumberedInTheOrderInWhichTheyCome(byte[] from, byte[] to, byte expected)
    {
        var table = new EdgeTable(expected);
        // A second time over, after it has been cleared: what was in it is forgotten.
        for (int round = 0; round < 2; round++)
        {
            var known = new Dictionary<(int, int), int>();
            foreach ((byte a, byte b) in round == 0 ? from.Zip(to) : to.Zip(from))
            {
                (int, int) pair = (a, 1000 * b);
                Assert.Equal(known.GetValueOrDefault(pair, -1), table.Find(pair.Item1, pair.Item2));
                if (!known.TryGetValue(pair, out int number))
                    known[pair] = number = known.Count;
                Assert.Equal(number, table.Add(pair.Item1, pair.Item2));
                Assert.Equal(pair, table[number]);
                Assert.Equal(known.Count, table.Count);
            }
            table.Clear();
            Assert.Equal(0, table.Count);
            Assert.All(known.Keys, pair => Assert.Equal(-1, table.Find(pair.Item1, pair.Item2)));
        }
    }
}
