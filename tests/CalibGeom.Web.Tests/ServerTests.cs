using System.Net;
using System.Text;
using CalibGeom.Formats;
using CalibGeom.Inspection;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Web.Tests;

/// <summary>Many requests at once, and nothing synchronous on the streams of any.</summary>
public class ServerTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public void ThePageShowsThisServer() => ObjectServer.RequireOnPage();

    [Fact]
    public async Task NothingSynchronousIsLetPass()
    {
        Assert.False(server.AllowsSynchronous);
        using HttpResponseMessage refused = await server.Client.GetAsync("/synchronous");
        Assert.Equal(HttpStatusCode.InternalServerError, refused.StatusCode);
    }

    [Fact]
    public async Task FiftyRequestsAtOnceAreServed()
    {
        string expected = Answer(MeshFile.Read(Generated("witness")));
        string[] names = [.. Presets.All.Select(p => p.Name)];
        byte[] mesh = await File.ReadAllBytesAsync(Generated("witness"));
        Task<bool>[] requests =
        [
            .. Enumerable.Range(0, 36).Select(n => MakesAsGenerated(names[n % names.Length])),
            .. Enumerable.Range(0, 14).Select(async _ => (await Inspect(mesh)).Text == expected),
        ];
        bool[] served = await Task.WhenAll(requests);
        Assert.Equal(50, served.Length);
        Assert.All(served, Assert.True);
    }

    [Fact]
    public async Task ASpecThatIsPostedComesBackAsItsMesh()
    {
        (HttpStatusCode status, byte[] stl) = await Post("/objects", SpecJson.ToCanonicalBytes(Presets.Witness));
        Assert.Equal(HttpStatusCode.OK, status);
        // The header of 80 bytes holds the name.
        Assert.Equal((await File.ReadAllBytesAsync(Generated("witness")))[80..], stl[80..]);
    }

    [Fact]
    public async Task WhatCannotBeUsedIsSaid()
    {
        (HttpStatusCode status, string text) = await Inspect(
            (await File.ReadAllBytesAsync(Generated("witness")))[..100_000]
        );
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("posted mesh", text, StringComparison.Ordinal);
        (status, byte[] body) = await Post("/objects", "{\"plate\": 1}"u8.ToArray());
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("plate", Encoding.UTF8.GetString(body), StringComparison.Ordinal);
        using HttpResponseMessage missing = await server.Client.GetAsync("/objects/nobody.stl");
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
    }

    private static string Generated(string name) => Path.Combine(Repository.Root, "generated", $"{name}.stl");

    private static string Answer(MeshFile file)
    {
        MeshReport report = MeshInspection.Run(file.ToMesh());
        return $"{report.Verdict}: {string.Join(", ", report.Findings.Select(f => f.Rule))}";
    }

    private async Task<bool> MakesAsGenerated(string name)
    {
        using HttpResponseMessage response = await server.Client.GetAsync(
            $"/objects/{name}.stl",
            HttpCompletionOption.ResponseHeadersRead
        );
        response.EnsureSuccessStatusCode();
        byte[] made = await response.Content.ReadAsByteArrayAsync(),
            expected = await File.ReadAllBytesAsync(Generated(name));
        return made.AsSpan().SequenceEqual(expected);
    }

    private async Task<(HttpStatusCode Status, string Text)> Inspect(byte[] mesh)
    {
        (HttpStatusCode status, byte[] body) = await Post("/inspect", mesh);
        return (status, Encoding.UTF8.GetString(body));
    }

    private async Task<(HttpStatusCode Status, byte[] Body)> Post(string path, byte[] body)
    {
        using var content = new StreamContent(new AsyncOnlyStream(body));
        using HttpResponseMessage response = await server.Client.PostAsync(path, content);
        return (response.StatusCode, await response.Content.ReadAsByteArrayAsync());
    }
}
