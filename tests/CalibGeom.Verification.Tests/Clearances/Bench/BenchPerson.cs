using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Clearances.Bench;

/// <summary>One simulated person at a bench: a print whose truth is known, and the readings of it.</summary>
internal sealed class BenchPerson
{
    private const double Scatter = 0.008;
    private readonly SeededRandom random;
    private readonly BenchWorld world;
    private readonly double[] scale,
        growth;
    private readonly double outsideBias,
        insideBias,
        outsidePhase,
        insidePhase,
        wavelength;
    private readonly double outsidePerson,
        insidePerson,
        outsideGive,
        insideGive;

    internal BenchPerson(SeededRandom random, BenchWorld world)
    {
        this.random = random;
        this.world = world;
        double root = Math.Sqrt(3);
        scale = [0.003 * random.Normal(), 0.003 * random.Normal()];
        growth = [0.02 + 0.02 * random.Normal(), 0.02 + 0.02 * random.Normal()];
        outsideBias = root * Instrument.DefaultOutsideError * random.Uniform(-1, 1);
        insideBias = root * Instrument.DefaultInsideError * random.Uniform(-1, 1);
        outsidePhase = random.Uniform(0, 2 * Math.PI);
        insidePhase = random.Uniform(0, 2 * Math.PI);
        wavelength = random.Uniform(5, 40);
        outsidePerson = world.SecondPerson * random.Normal();
        insidePerson = world.SecondPerson * random.Normal();
        outsideGive = world.Give * random.Normal();
        insideGive = world.Give * random.Normal();
    }

    /// <summary>The clearance of joint 1 in X: of the print that was read, or of the next one.</summary>
    internal double Truth { get; private set; }

    /// <summary>Readings of each print.</summary>
    internal IReadOnlyList<ReadingSet> Read(bool references, bool declared)
    {
        int repeats = 1 + (int)random.Uniform(0, 4);
        string[] always = ["span.x", "span.y", "box1.outside.x", "box2.inside.y"];
        string[] read = StandardObject
            .Faces.Where(id => always.Contains(id) || random.Uniform() >= world.Missing)
            .ToArray();
        var sets = new List<ReadingSet>();
        for (int print = 0; print < world.Prints; print++)
            sets.Add(ReadPrint(read, repeats, references && print == 0, declared));
        if (world.BetweenPrints > 0)
            Truth = 0.05 * (1 + scale[0]) - 2 * (growth[0] + world.BetweenPrints * random.Normal());
        return sets;
    }

    private ReadingSet ReadPrint(string[] read, int repeats, bool references, bool declared)
    {
        double shift = world.BetweenPrints * random.Normal();
        var readings = new List<Reading>();
        var faces = new Dictionary<string, double>(StringComparer.Ordinal);
        string wrong = read[(int)random.Uniform(0, read.Length)];
        int wrongReading = (int)random.Uniform(0, read.Length * repeats);
        double sign = random.Uniform() < 0.5 ? -1 : 1;
        foreach (Feature f in StandardObject.Faces.Select(id => StandardObject.Table.Find(id)!))
        {
            int axis = f.Axis == "x" ? 0 : 1;
            faces[f.Id] = StandardObject.True(f, scale[axis], growth[axis] + shift) + 0.003 * random.Normal();
            if (!read.Contains(f.Id))
                continue;
            double seen = Seen(f, faces[f.Id]) + (f.Id == wrong ? sign * world.WrongFace : 0);
            for (int k = 0; k < repeats; k++)
                readings.Add(
                    Reading.Size(f.Id, Display(seen + (readings.Count == wrongReading ? sign * world.WrongReading : 0)))
                );
        }
        if (references)
            for (int k = 0; k < 3; k++)
            {
                readings.Add(Reading.Size("reference.outside.10", Display(10 + outsideBias + Wave(10, false))));
                readings.Add(Reading.Size("reference.inside.8", Display(8 + insideBias + Wave(8, true))));
            }
        Truth = (faces["box2.inside.x"] - faces["box1.outside.x"]) / 2;
        var caliper = new Instrument(
            "",
            resolution: world.Rounded ? 0.01 : 0,
            repeatability: declared && !world.HeavyTails ? Scatter : null
        );
        return new ReadingSet(
            readings,
            world.Rounded && !declared ? [] : [caliper],
            state: PartState.PostCured,
            material: world.Give == 0 ? Material.Rigid
                : declared ? Material.Flexible
                : null
        );
    }

    private double Seen(Feature f, double size)
    {
        bool inside = f.Faces == FaceKind.Inside,
            second = (int)(f.Nominal * 10) % 2 == 0;
        double burr = f.Id.Size == KnownFeatures.Outside ? world.Burr : 0;
        return size
            + 0.006 * random.Normal()
            + (inside ? insideBias + insideGive : outsideBias + outsideGive)
            + (second ? (inside ? insidePerson : outsidePerson) : 0)
            + world.Warp * random.Normal()
            + Wave(f.Nominal, inside)
            + burr;
    }

    private double Wave(double length, bool inside) =>
        world.Wave * Math.Sin(2 * Math.PI * length / wavelength + (inside ? insidePhase : outsidePhase));

    private double Display(double size)
    {
        double value =
            size
            + Scatter * (world.HeavyTails ? random.Normal() / Math.Sqrt(random.ChiSquared(3) / 3) : random.Normal());
        return world.Rounded ? Math.Round(value, 2) : value;
    }
}
