using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// Command lines of <c>make</c> and <c>presets</c> that end with 2: one line on standard error, nothing written,
/// nothing replaced.
/// </summary>
public class BadUseTests
{
    [Theory]
    [InlineData("make --object nowhere.json -o out.stl", "nowhere.json: there is no such file")]
    [InlineData("make --object . -o out.stl", "this is a directory.")]
    [InlineData("make --object a.json b.json -o out.stl", "b.json")]
    [InlineData(
        "make --object nope -o out.stl",
        "nope: there is no such file, and no preset of that name. The presets are standard, witness, search, fine, coarse, limit."
    )]
    [InlineData("make --object -o out.stl", "out.stl")]
    [InlineData("make --object witnes -o out.stl", "Did you mean witness?")]
    [InlineData("make a.json -o out.stl", "To say what the object is, write --object")]
    [InlineData("make --objct witness -o out.stl", "Did you mean --object?")]
    [InlineData("make --object witness --object fine -o out.stl", "--object")]
    [InlineData("make --colour -o out.stl", "There is no option --colour here. See --help.")]
    [InlineData("make --colour blue -o out.stl", "There is no option --colour here.")]
    [InlineData("make --set -o out.stl", "out.stl")]
    [InlineData("make --set", "--set")]
    [InlineData(
        "make --set columns.heigth=10 -o out.stl",
        "columns.heigth=10: columns has no \"heigth\". Did you mean \"height\"?"
    )]
    [InlineData("make --set columns.height=abc -o out.stl", "\"abc\" cannot be read as columns.height (1 to 60 mm).")]
    [InlineData("make --set columns.height=6,3 -o out.stl", "Write numbers with a decimal point.")]
    [InlineData("make --set columns.height=NaN -o out.stl", "cannot be read as columns.height")]
    [InlineData("make --set columns.height=-4 -o out.stl", "columns.height is -4 mm; the range is 1 to 60 mm.")]
    [InlineData("make --set columns.copies=1e9 -o out.stl", "the range is 1 to 8.")]
    [InlineData(
        "make --set nest.clearances=0.1 -o out.stl",
        "nest.clearances needs one entry for each pair of neighbouring boxes"
    )]
    [InlineData("make -o", "-o")]
    [InlineData("make -o out.txt", "the name must end in .stl, .3mf or .obj.")]
    [InlineData("make -o out", "the name must end in .stl, .3mf or .obj.")]
    [InlineData("make -o missing/out.stl", "there is no directory")]
    [InlineData("make -o folder.stl", "it is a directory")]
    [InlineData("make --check -o out.stl", "--check writes nothing; leave --check or -o away.")]
    [InlineData(
        "make --object bad.json -o out.stl",
        "bad.json:2:6: $.nest.sizes[1]: nest.sizes is 2 mm; the range is 3 to 100 mm."
    )]
    [InlineData("make --object cut.json -o out.stl", "cut.json:1:9: not JSON")]
    [InlineData("make --object empty.json -o out.stl", "empty.json:1:1: not JSON")]
    [InlineData("make --object binary.json -o out.stl", "must be UTF-8 text; byte 1 is not")]
    [InlineData("make --object huge.json -o out.stl", "larger than 1024 KiB")]
    [InlineData("make --object deep.json -o out.stl", "a number is needed, not a list.")]
    [InlineData("make --object many.json -o out.stl", "columns.diameters has more than 64 entries")]
    [InlineData("make --object - -o out.stl", "standard input:1:1: not JSON")]
    [InlineData("make --object plain.3mf -o out.stl", "plain.3mf: this 3MF carries no spec, and plain.object.json")]
    [InlineData("make --object broken.3mf -o out.stl", "broken.3mf")]
    [InlineData("presets nope", "There is no preset \"nope\".")]
    [InlineData("presets standard witness", "witness")]
    public void EndsWithTwo(string line, string message)
    {
        using var folder = Prepare();
        Dictionary<string, byte[]> before = Contents(folder);
        string[] args = line.Split(' ').Select(word => IsFile(word) ? folder[word] : word).ToArray();
        CliRun run = CliRun.Of([args[0], "--force", .. args[1..]]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
        Assert.Empty(run.Out);
        Assert.Empty(run.Bytes);
        Assert.Equal(before, Contents(folder));
    }

    private static TriangleMesh Triangle =>
        new([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1], [0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]);

    private static bool IsFile(string word) =>
        word is "." or "folder.stl"
        || word.EndsWith(".json", StringComparison.Ordinal)
        || word.EndsWith(".3mf", StringComparison.Ordinal)
        || word.Contains("out", StringComparison.Ordinal);

    private static TemporaryFolder Prepare()
    {
        var folder = new TemporaryFolder();
        folder.Write("out.stl", "as it was");
        folder.Write("out.features.csv", "as it was");
        folder.Write("a.json", "{}");
        folder.Write("bad.json", "{\"nest\": {\"sizes\": [8.0,\n     2.0]}}");
        folder.Write("cut.json", "{\"nest\":");
        folder.Write("empty.json", "");
        File.WriteAllBytes(folder["binary.json"], [0xFF, 0xFE, 0x00]);
        folder.Write("huge.json", new string(' ', 2_000_000));
        folder.Write("deep.json", new string('[', 1000).Insert(0, "{\"nest\":{\"clearances\":"));
        folder.Write(
            "many.json",
            $"{{\"columns\":{{\"diameters\":[{string.Join(",", Enumerable.Repeat("0.5", 10_000))}]}}}}"
        );
        folder.Write("broken.3mf", "PK");
        using (FileStream plain = File.Create(folder["plain.3mf"]))
            ThreeMfWriter.Write(plain, [new MeshObject("a", Triangle)], new ThreeMfContent());
        Directory.CreateDirectory(folder["folder.stl"]);
        return folder;
    }

    private static Dictionary<string, byte[]> Contents(TemporaryFolder folder) =>
        Directory.GetFiles(folder.Root, "*", SearchOption.AllDirectories).ToDictionary(f => f, File.ReadAllBytes);
}
