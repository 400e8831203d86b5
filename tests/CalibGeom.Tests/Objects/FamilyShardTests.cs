using CalibGeom.Objects.Families;

namespace CalibGeom.Tests.Objects;

public class FamilyShardTests
{
    [Theory]
    [InlineData(0, 1, "part")]
    [InlineData(2, 1, "part")]
    [InlineData(1, 0, "of")]
    [InlineData(1, 100_001, "of")]
    [InlineData(-1, -1, "of")]
    public void APartThatDoesNotExistIsRefused(int part, int of, string parameter) =>
        Assert.Equal(parameter, Assert.Throws<ArgumentException>(() => new FamilyShard(part, of)).ParamName);

    [Theory]
    [InlineData("0/1")]
    [InlineData("2/1")]
    [InlineData("1/0")]
    [InlineData("1/100001")]
    [InlineData("-1/2")]
    [InlineData("1")]
    [InlineData("1/2/3")]
    [InlineData("99999999999/99999999999")]
    public void ATextThatIsNoPartIsRefused(string text) => Assert.Throws<InputException>(() => FamilyShard.Parse(text));

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(40)]
    public void AllPartsTogetherHaveEachNumberOnce(int of) =>
        Assert.Equal(
            Enumerable.Range(1, 23),
            Enumerable.Range(1, of).SelectMany(p => FamilyShard.Parse($"{p}/{of}").Numbers(23)).Order()
        );
}
