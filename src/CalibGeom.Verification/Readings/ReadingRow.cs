using System.Globalization;

namespace CalibGeom.Verification.Readings;

/// <summary>One row of a readings file as text, and the reading it means.</summary>
internal sealed record ReadingRow(string Feature, string Value, string Unit, string Instrument, string Note, int Line)
{
    private const NumberStyles Number =
        NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    private static readonly string[] Units = ["mm", "um", "\u00b5m", "\u03bcm", "cm", "in", "inch"];

    /// <summary>The row with a decimal comma written as a point, where commas separate nothing.</summary>
    internal ReadingRow WithPoint() => this with { Value = Value.Replace(',', '.') };

    /// <summary>The reading.</summary>
    /// <exception cref="InputException">It means none; the message says why, without the place.</exception>
    internal Reading ToReading()
    {
        if (Feature.Length == 0)
            throw new InputException(
                InputIds.Readings,
                "the feature is missing. Write its id, such as box1.outside.x."
            );
        if (FeatureId.TryParse(Feature) is not { } id)
            throw new InputException(
                InputIds.Readings,
                $"\"{Feature}\" is no feature id. An id is words between dots, such as box1.outside.x, at most "
                    + $"{FeatureId.MostCharacters} characters."
            );
        try
        {
            return Reading.KindOf(id) switch
            {
                ReadingKind.Fit => ToFit(),
                ReadingKind.Stage => ToStage(),
                ReadingKind.Count => ToCount(),
                _ => ToSize(),
            };
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Readings, e, $"{Feature}: ");
        }
    }

    private Reading ToSize()
    {
        const double Most = 1000;
        if (UnitInValue() is { } split)
            return split.ToSize();
        double number = ToNumber(),
            mm = number * Scale();
        if (mm <= Most || number > Most * Most)
            return Reading.Size(Feature, mm, Instrument, Note, Line);
        string meant =
            number <= Most
                ? $"is the unit wrong? If {Value} are millimetres, write mm or leave the unit empty"
                : $"is the unit wrong? If {Value} are micrometres, write um in the unit field";
        throw new InputException(
            InputIds.Readings,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Feature} is {Value} {(Unit.Length > 0 ? Unit : "mm")}, that is {mm:0.###} mm; a size is at "
                    + $"most {Most} mm. {char.ToUpperInvariant(meant[0])}{meant[1..]}."
            )
        );
    }

    /// <summary>A value such as <c>6.31 mm</c> with its unit in the unit's own field; null when it has none.</summary>
    private ReadingRow? UnitInValue()
    {
        string number = Value.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz\u00b5\u03bc"]);
        string unit = Value[number.Length..];
        if (unit.Length == 0 || number.Length == 0 || !Units.Contains(unit))
            return null;
        return Unit.Length == 0 || Unit == unit
            ? this with
            {
                Value = number.TrimEnd(),
                Unit = unit,
            }
            : throw new InputException(
                InputIds.Readings,
                $"{Feature} is \"{Value}\", but its unit field says {Unit}. Write the unit once."
            );
    }

    private Reading ToFit()
    {
        CheckUnit("fit");
        FeltFit fit =
            ReadingWords.ToFit(Value)
            ?? throw new InputException(
                InputIds.Readings,
                $"{Feature} is \"{Value}\"; a fit is one of {ReadingWords.FitList}."
            );
        return Reading.Felt(Feature, fit, Note, Line);
    }

    private Reading ToStage()
    {
        CheckUnit("stage");
        ColumnStage stage =
            ReadingWords.ToStage(Value)
            ?? throw new InputException(
                InputIds.Readings,
                $"{Feature} is \"{Value}\"; the last stage at which a column stood is one of {ReadingWords.StageList}."
            );
        return Reading.Stood(Feature, stage, Note, Line);
    }

    private Reading ToCount()
    {
        CheckUnit("count");
        double number = ToNumber();
        if (number != Math.Floor(number) || Math.Abs(number) > int.MaxValue)
            throw new InputException(InputIds.Readings, $"{Feature} is {Value}; a count is a whole number.");
        return Reading.Count(Feature, (int)number, Note, Line);
    }

    private double ToNumber()
    {
        if (double.TryParse(Value, Number, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
            return number;
        string point = Value.Replace(',', '.');
        bool comma = point != Value && double.TryParse(point, Number, CultureInfo.InvariantCulture, out _);
        throw new InputException(
            InputIds.Readings,
            comma
                ? $"{Feature} is \"{Value}\", with a decimal comma. Write {point}, with a decimal point."
                : $"{Feature} is \"{Value}\", which is no number. Write it like 8.02."
        );
    }

    private double Scale() =>
        Unit switch
        {
            "" or "mm" => 1,
            "um" or "\u00b5m" or "\u03bcm" => 0.001,
            "cm" => 10,
            "in" or "inch" => 25.4,
            _ when double.TryParse(Unit, Number, CultureInfo.InvariantCulture, out _) => throw new InputException(
                InputIds.Readings,
                $"{Feature} has the unit \"{Unit}\": was {Value},{Unit} meant as a decimal comma? Write "
                    + $"{Value}.{Unit}, with a decimal point."
            ),
            _ => throw new InputException(
                InputIds.Readings,
                $"{Feature} has the unit \"{Unit}\"; units are mm (or empty), um, cm and in."
            ),
        };

    private void CheckUnit(string unit)
    {
        if (Unit.Length > 0 && Unit != unit)
            throw new InputException(
                InputIds.Readings,
                $"{Feature} has the unit \"{Unit}\"; leave it empty or write {unit}."
            );
    }
}
