using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace CalibGeom.Cli.Tests;

/// <summary>The installed program instead of the code in this process, where <c>CALIBGEOM_PROGRAM</c> names
/// it.</summary>
internal static class InstalledProgram
{
    internal static string? Path { get; } =
        Environment.GetEnvironmentVariable("CALIBGEOM_PROGRAM") is { Length: > 0 } path ? path : null;

    internal static CliRun Run(string program, byte[] input, string[] args)
    {
        var start = new ProcessStartInfo(program, args)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Directory.GetCurrentDirectory(),
        };
        string culture = CultureInfo.CurrentCulture.Name.Replace('-', '_');
        start.Environment["LC_ALL"] = culture.Length > 0 ? $"{culture}.UTF-8" : "C.UTF-8";
        using Process process = Process.Start(start)!;
        using var bytes = new MemoryStream();
        Task output = process.StandardOutput.BaseStream.CopyToAsync(bytes);
        Task<string> error = process.StandardError.ReadToEndAsync();
        try
        {
            process.StandardInput.BaseStream.Write(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // The program needs no input and is gone already.
        }
        output.Wait();
        process.WaitForExit();
        // A result of bytes is told apart from text by what was asked for.
        string text = args.Zip(args.Skip(1)).Contains(("-o", "-")) ? "" : Encoding.UTF8.GetString(bytes.ToArray());
        return new CliRun(process.ExitCode, text, error.Result, bytes.ToArray());
    }
}
