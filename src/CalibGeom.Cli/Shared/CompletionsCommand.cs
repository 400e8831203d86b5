using System.CommandLine;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// <c>calibgeom completions SHELL</c>: a script that lets a shell complete commands, options and values.
/// </summary>
internal static class CompletionsCommand
{
    // Each asks the program itself: [suggest:POSITION] is answered by the parser, so scripts never go stale.
    private static readonly Dictionary<string, string> Scripts = new(StringComparer.Ordinal)
    {
        ["bash"] = """
            _calibgeom() {
                local IFS=$'\n'
                COMPREPLY=($(calibgeom "[suggest:$COMP_POINT]" "$COMP_LINE" 2>/dev/null))
            }
            complete -o default -F _calibgeom calibgeom
            """,
        ["zsh"] = """
            #compdef calibgeom
            _calibgeom() {
                local -a found
                found=("${(@f)$(calibgeom "[suggest:$CURSOR]" "$BUFFER" 2>/dev/null)}")
                compadd -a found || _files
            }
            compdef _calibgeom calibgeom
            """,
        ["fish"] = """
            function __calibgeom_complete
                set -l typed (commandline -cp | string collect)
                calibgeom "[suggest:"(string length -- "$typed")"]" "$typed" 2>/dev/null
                __fish_complete_path (commandline -ct)
            end
            complete -c calibgeom -f -a '(__calibgeom_complete)'
            """,
        ["powershell"] = """
            Register-ArgumentCompleter -Native -CommandName calibgeom -ScriptBlock {
                param($word, $line, $position)
                calibgeom "[suggest:$position]" "$line" 2>$null | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                }
            }
            """,
    };

    internal static Command Build(CommandIo io)
    {
        var shell = new Argument<string>("SHELL") { Description = string.Join(", ", Scripts.Keys) + "." };
        shell.CompletionSources.Add(_ => Scripts.Keys);
        var command = new Command(
            "completions",
            """
            Print a script that lets your shell complete commands, options, presets and parameters.

            Example:
              calibgeom completions bash >> ~/.bashrc
            """
        );
        command.Arguments.Add(shell);
        command.SetAction(parsed =>
        {
            string name = parsed.GetValue(shell)!;
            io.Out.WriteLine(
                Scripts.TryGetValue(name, out string? script)
                    ? script
                    : throw new InputException(
                        InputIds.Option,
                        $"There is no script for {name}. Name {string.Join(", ", Scripts.Keys)}."
                    )
            );
            return ExitCode.Done;
        });
        return command;
    }
}
