namespace CalibGeom.Fuzz;

/// <summary>A command line of <see cref="FuzzedCommands"/> with changed words and files. One seed, one line.</summary>
internal sealed class FuzzedLine
{
    private static readonly string[] Values =
    [
        "",
        " ",
        "-",
        "--",
        "-1",
        "0",
        "-0",
        "1e308",
        "1e-308",
        "NaN",
        "Infinity",
        "1,5",
        "2147483648",
        "99999999999999999999",
        "0:1:0",
        "1:0:0.1",
        "0:1e9:1e-9",
        "a=b",
        "=",
        "x=",
        "nest=null",
        "nest.sizes=8,11.2,16",
        "nest.clearances=-5",
        "columns.height=1e9",
        "12/3.5",
        "/",
        "1x1",
        "1x1x1x1",
        "0x0",
        "1e9x1e9",
        "{n}",
        "nowhere/x.stl",
        "out",
        "\u202Ex",
        "\u001B[2J",
        "a\nb",
        "a\0b",
        "\ud800",
        "\u00B5",
        "@x",
        "=1+1",
        new string('9', 400),
        new string('x', 5000),
        "standard",
        "fine",
        "--json",
        "--help",
        "--force",
        "--quiet",
    ];

    private readonly Random random;

    internal FuzzedLine(int seed, Dictionary<string, byte[]> corpus)
    {
        random = new Random(seed);
        string[] names = [.. corpus.Keys.Order(StringComparer.Ordinal)];
        var mutator = new Mutator(seed);
        string[] words = FuzzedCommands.All[seed % FuzzedCommands.All.Count].Split(' ');
        if (random.Next(2) == 0)
            words = Changed([.. words]);
        Words = Array.ConvertAll(
            words,
            word =>
            {
                foreach (string name in names)
                    if (word.Contains($"{{{name}}}", StringComparison.Ordinal))
                    {
                        byte[] content = random.Next(12) == 0 ? corpus[names[random.Next(names.Length)]] : corpus[name];
                        if (random.Next(2) == 0)
                            content = mutator.Changed(content, corpus[names[random.Next(names.Length)]]);
                        Files[name] = content;
                        word = word.Replace($"{{{name}}}", name, StringComparison.Ordinal);
                    }
                return word.Replace("{out}", "out", StringComparison.Ordinal);
            }
        );
        Input = mutator.Changed(corpus[names[random.Next(names.Length)]], corpus[names[0]]);
    }

    internal string[] Words { get; }

    /// <summary>What stands in the folder before.</summary>
    internal Dictionary<string, byte[]> Files { get; } = [];

    /// <summary>Standard input.</summary>
    internal byte[] Input { get; }

    /// <summary>Whether it may add to a file, or was allowed to write over one.</summary>
    internal bool Appends => Words is ["log", "add" or "undo", ..] or ["caliper", "add", ..];

    private string[] Changed(List<string> words)
    {
        for (int changes = 1 + random.Next(3); changes > 0 && words.Count > 1; changes--)
        {
            int at = 1 + random.Next(words.Count - 1);
            switch (random.Next(5))
            {
                case 0:
                    words.RemoveAt(at);
                    break;
                case 1:
                    words.Insert(random.Next(words.Count + 1), words[at]);
                    break;
                case 2:
                    string[] other = FuzzedCommands.All[random.Next(FuzzedCommands.All.Count)].Split(' ');
                    words.Insert(at, other[random.Next(other.Length)]);
                    break;
                default:
                    words[at] = Values[random.Next(Values.Length)];
                    break;
            }
        }
        return [.. words];
    }
}
