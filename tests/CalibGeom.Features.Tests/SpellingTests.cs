using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Features.Tests;

public class SpellingTests
{
    private static readonly FsCheck.Arbitrary<string> Words = Gen.Elements("a", "b", "c")
        .ListOf()
        .Select(string.Concat)
        .Where(w => w.Length < 7)
        .ToArbitrary();

    [Theory]
    [InlineData("", "", 0)]
    [InlineData("", "box", 3)]
    [InlineData("box", "bix", 1)]
    [InlineData("box", "bo", 1)]
    [InlineData("box", "boxx", 1)]
    [InlineData("box", "obx", 1)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ca", "abc", 3)]
    public void EditsAreCounted(string a, string b, int edits) => Assert.Equal(edits, Spelling.Distance(a, b));

    [Property(MaxTest = 300)]
    public FsCheck.Property ADistanceIsSymmetricAndZeroOnlyForTheSame() =>
        Prop.ForAll(
            Words,
            Words,
            (a, b) =>
                Spelling.Distance(a, b) == Spelling.Distance(b, a)
                && (Spelling.Distance(a, b) == 0) == (a == b)
                && Spelling.Distance(a, b) <= Math.Max(a.Length, b.Length)
                && Spelling.Distance(a, b) >= Math.Abs(a.Length - b.Length)
        );

    [Fact]
    public void TheNearestIsMeantWhenItIsNearEnough()
    {
        string[] known = ["box1.outside.x", "box1.outside.y", "box2.outside.x"];
        Assert.Equal("box1.outside.y", Spelling.Nearest("box1.outsied.y", known, 4));
        Assert.Equal("box1.outside.x", Spelling.Nearest("box1.outside", known, 2));
        Assert.Null(Spelling.Nearest("box1.outside", known, 1));
        Assert.Null(Spelling.Nearest("box", [], 9));
    }
}
