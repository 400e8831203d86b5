namespace CalibGeom.Features.Tests;

/// <summary>A finding as text is a line that can be read.</summary>
public class FindingTextTests
{
    [Theory]
    [InlineData(
        "nest.wall",
        "Make it thicker.",
        "warning [wall-too-thin] nest.wall: The wall is thin. Make it thicker."
    )]
    [InlineData("nest.wall", "", "warning [wall-too-thin] nest.wall: The wall is thin.")]
    [InlineData("", "", "warning [wall-too-thin] The wall is thin.")]
    public void ItSaysWhatWhereAndWhatToDo(string subject, string remedy, string text) =>
        Assert.Equal(
            text,
            new Finding("wall-too-thin", Severity.Warning, subject, "The wall is thin.", remedy)
            {
                Value = 0.4,
            }.ToString()
        );
}
