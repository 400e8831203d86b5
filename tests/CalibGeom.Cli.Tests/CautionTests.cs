using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

public class CautionTests
{
    /// <summary>Nothing that is to be done is left out for brevity.</summary>
    [Theory]
    [InlineData("nitrile gloves")]
    [InlineData("eye protection")]
    [InlineData("fresh air")]
    [InlineData("safety data sheet")]
    [InlineData("local rules for waste")]
    [InlineData("izes are estimates")]
    public void TheShortOneSaysAllThatIsToBeDone(string what)
    {
        Assert.True(Caution.Short.Length < Caution.Text.Length);
        foreach (bool terminal in new[] { true, false })
        {
            using var error = new StringWriter();
            var io = new CommandIo
            {
                Out = TextWriter.Null,
                Error = error,
                OpenInput = () => Stream.Null,
                OpenOutput = () => Stream.Null,
                Interactive = terminal,
            };
            io.SayCaution();
            Assert.Contains(what, error.ToString(), StringComparison.Ordinal);
        }
    }
}
