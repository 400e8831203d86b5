using System.Globalization;

namespace CalibGeom.Cli.Tests;

/// <summary>A culture that fails whoever asks it how to write a number or a date.</summary>
internal sealed class FailingCulture() : CultureInfo("")
{
    public override NumberFormatInfo NumberFormat
    {
        get => throw new InvalidOperationException("The culture was asked for its number format.");
        set => throw new NotSupportedException();
    }

    public override DateTimeFormatInfo DateTimeFormat
    {
        get => throw new InvalidOperationException("The culture was asked for its date format.");
        set => throw new NotSupportedException();
    }

    public override object? GetFormat(Type? formatType) =>
        throw new InvalidOperationException($"The culture was asked for {formatType}.");

    public override CompareInfo CompareInfo =>
        throw new InvalidOperationException("The culture was asked to compare texts.");

    public override TextInfo TextInfo => throw new InvalidOperationException("The culture was asked to change case.");
}
