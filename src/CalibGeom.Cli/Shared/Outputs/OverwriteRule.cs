using System.CommandLine;
using System.CommandLine.Parsing;
using CalibGeom.Features.Files;
using CalibGeom.Objects;

namespace CalibGeom.Cli.Shared.Outputs;

/// <summary>
/// The one rule of every command: nothing is written over a file that is read in the same run, and over a file that
/// this tool did not write, or that holds what was measured, only with <c>--force</c>.
/// </summary>
internal sealed class OverwriteRule
{
    /// <summary>The options of all commands that name a file to write.</summary>
    internal static readonly string[] Outputs =
    [
        "--output",
        "--sheet",
        "--picture",
        "--plot",
        "--column-plot",
        "--grid",
        "--report",
        "--card",
        Appended,
    ];

    // A log is never written over, only appended to.
    private const string Appended = "--to";

    private static readonly StringComparer Names = OperatingSystem.IsLinux()
        ? StringComparer.Ordinal
        : StringComparer.OrdinalIgnoreCase;

    private readonly HashSet<string> inputs;
    private readonly bool force;

    private OverwriteRule(IEnumerable<string> inputs, bool force) =>
        (this.inputs, this.force) = (inputs.Select(RealPath.Of).ToHashSet(Names), force);

    /// <summary>The rule of a run that reads nothing.</summary>
    internal static OverwriteRule None { get; } = new([], false);

    /// <summary>The rule of a command line: whatever it names that is a file and no output is read.</summary>
    internal static OverwriteRule Of(ParseResult parsed) =>
        new(InputsOf(parsed.CommandResult).Where(File.Exists), parsed.GetValue<bool>("--force"));

    /// <summary>Refuses at once, before any work is done, what a command line names to write and may not.</summary>
    /// <exception cref="InputException">A file may not be written over.</exception>
    internal void RequireFree(ParseResult parsed)
    {
        foreach (OptionResult option in parsed.CommandResult.Children.OfType<OptionResult>())
            if (Outputs.Contains(option.Option.Name) && option.Option.Name != Appended)
                foreach (Token token in option.Tokens)
                    if (Refusal(token.Value) is { } reason)
                        throw new InputException(InputIds.Option, reason);
    }

    /// <summary>Why a file may not be written over; null when it may, or does not exist.</summary>
    internal string? Refusal(string path)
    {
        if (!File.Exists(path) || RealPath.IsDevice(path))
            return null;
        if (RealPath.IsPipe(path))
            return $"{path} is a pipe, which a file cannot replace. Name a file, or - for standard output.";
        if (inputs.Contains(RealPath.Of(path)))
            return $"{path} is read in this run and would be overwritten. Name another file to write.";
        return force ? null : OwnFile.Refusal(path);
    }

    /// <summary>Why an object file may not be written over: it holds another object, or that of another mesh.</summary>
    internal string? ObjectRefusal(string path, ObjectFile wanted)
    {
        if (force || ObjectIn(path) is not { } there)
            return null;
        if (there.Digest == wanted.Digest && there.Mesh == wanted.Mesh)
            return null;
        return $"{path} holds the object of {(there.Mesh.Length > 0 ? there.Mesh : there.Name)}, digest {there.Digest}; "
            + $"this one would be that of {wanted.Mesh}, digest {wanted.Digest}, and readings already taken would have "
            + "no object. Name another file to write; --force writes over it.";
    }

    /// <summary>What stands in a file; null where it is no object file, which <see cref="Refusal"/> judges.</summary>
    private static ObjectFile? ObjectIn(string path)
    {
        try
        {
            if (!File.Exists(path))
                return null;
            using FileStream stream = File.OpenRead(path);
            return ObjectFileJson.Read(stream, path);
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static IEnumerable<string> InputsOf(CommandResult command) =>
        command.Children.SelectMany(c =>
            c switch
            {
                OptionResult o when Outputs.Contains(o.Option.Name) => [],
                OptionResult or ArgumentResult => c.Tokens.Select(t => t.Value),
                _ => Enumerable.Empty<string>(),
            }
        );
}
