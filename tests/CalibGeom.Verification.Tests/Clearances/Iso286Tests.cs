using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Clearances;

/// <summary>
/// ISO 286-1:2010, table 1, and fundamental deviations as transcribed in two independent public tables that agree;
/// clearances of the preferred hole-basis fits (ANSI B4.2-1978 list) computed from them by hand.
/// </summary>
public class Iso286Tests
{
    [Theory]
    [InlineData(3, "4 6 10 14 25 40 60 100 140 250 400 600")]
    [InlineData(6, "5 8 12 18 30 48 75 120 180 300 480 750")]
    [InlineData(10, "6 9 15 22 36 58 90 150 220 360 580 900")]
    [InlineData(18, "8 11 18 27 43 70 110 180 270 430 700 1100")]
    [InlineData(30, "9 13 21 33 52 84 130 210 330 520 840 1300")]
    [InlineData(50, "11 16 25 39 62 100 160 250 390 620 1000 1600")]
    [InlineData(80, "13 19 30 46 74 120 190 300 460 740 1200 1900")]
    [InlineData(120, "15 22 35 54 87 140 220 350 540 870 1400 2200")]
    public void Tolerances(double nominal, string micrometres)
    {
        double[] expected = micrometres.Split(' ').Select(double.Parse).ToArray();
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i] / 1000, Iso286.Tolerance(i + 5, nominal));
    }

    [Fact]
    public void ABoundaryBelongsToTheSmallerStep()
    {
        Assert.Equal(0.015, Iso286.Tolerance(7, 10));
        Assert.Equal(0.018, Iso286.Tolerance(7, 10.0001));
    }

    [Theory]
    [InlineData("H11/c11", 5, 70, 220)]
    [InlineData("H11/c11", 8, 80, 260)]
    [InlineData("H11/c11", 16, 95, 315)]
    [InlineData("H11/c11", 25, 110, 370)]
    [InlineData("H9/d9", 5, 30, 90)]
    [InlineData("H9/d9", 25, 65, 169)]
    [InlineData("H9/e8", 8, 25, 83)]
    [InlineData("H9/e8", 25, 40, 125)]
    [InlineData("H8/f7", 8, 13, 50)]
    [InlineData("H8/f7", 16, 16, 61)]
    [InlineData("H7/g6", 8, 5, 29)]
    [InlineData("H7/g6", 25, 7, 41)]
    [InlineData("H7/h6", 16, 0, 29)]
    [InlineData("H8/h7", 16, 0, 45)]
    [InlineData("H7/k6", 5, -9, 11)]
    [InlineData("H7/k6", 25, -15, 19)]
    [InlineData("H7/n6", 8, -19, 5)]
    [InlineData("H7/n6", 16, -23, 6)]
    [InlineData("H7/p6", 16, -29, 0)]
    [InlineData("H7/p6", 25, -35, -1)]
    [InlineData("H7/s6", 5, -27, -7)]
    [InlineData("H7/s6", 16, -39, -10)]
    [InlineData("H7/s6", 25, -48, -14)]
    public void ElevenFits(string name, double nominal, double least, double most)
    {
        Assert.Equal(11, Iso286.Fits.Count);
        Interval clearance = Iso286.Fits.Single(f => f.Name == name).Clearance(nominal);
        Assert.Equal(least / 1000, clearance.Low, 12);
        Assert.Equal(most / 1000, clearance.High, 12);
    }

    [Fact]
    public void SpotCheckOfALimit() =>
        Assert.Equal((0.062, 0.100), (Iso286.Tolerance(9, 40), Iso286.Tolerance(10, 40)));

    [Property(MaxTest = 200)]
    public bool TheGradeIsTheSmallestThatHolds(ushort size, short deviation)
    {
        double nominal = 0.001 + size / 65535.0 * 49,
            d = deviation / 40000.0;
        int? grade = Iso286.GradeOf(nominal, d);
        bool holds = grade is null || Math.Abs(d) <= Iso286.Tolerance(grade.Value, nominal) / 2 + 1e-12;
        bool smallest = grade is null
            ? Math.Abs(d) > Iso286.Tolerance(16, nominal) / 2
            : grade == 1 || Math.Abs(d) > Iso286.Tolerance(grade.Value - 1, nominal) / 2;
        return holds && smallest;
    }

    [Fact]
    public void OutsideTheTablesThereIsNoGrade()
    {
        Assert.Null(Iso286.GradeOf(121, 0.01));
        Assert.Null(Iso286.GradeOf(8, 0.5));
        Assert.Equal(5, Iso286.GradeOf(60, 0));
        Assert.Throws<ArgumentException>(() => Iso286.Tolerance(7, 0));
        Assert.Throws<ArgumentException>(() => Iso286.Tolerance(17, 10));
        Assert.Throws<ArgumentException>(() => Iso286.Tolerance(3, 60));
        Assert.Throws<ArgumentException>(() => Iso286.Shaft('z', 7, 10));
    }
}
