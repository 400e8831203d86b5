using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace CalibGeom.Web.Tests;

/// <summary>The server of docs/web.md.</summary>
internal static class ObjectServer
{
    internal static void RequireOnPage() => DocExample.RequireOn("docs/web.md");

    internal static void Map(WebApplication app)
    {
        // begin
        app.MapGet(
            "/objects/{name}.stl",
            (string name, CancellationToken aborted) =>
                Presets.Find(name) is { } preset ? Made(preset.Name, preset.Spec, aborted) : Results.NotFound()
        );
        app.MapPost(
            "/objects",
            async (HttpRequest posted, CancellationToken aborted) =>
            {
                try
                {
                    return Made("posted", await SpecJson.ReadAsync(posted.Body, cancellation: aborted), aborted);
                }
                catch (InputException e)
                {
                    return Results.Text(e.Message, statusCode: 400);
                }
            }
        );
        app.MapPost(
            "/inspect",
            async (HttpRequest posted, CancellationToken aborted) =>
            {
                try
                {
                    MeshFile file = await MeshFile.ReadAsync(posted.Body, "posted mesh", cancellation: aborted);
                    MeshReport report = MeshInspection.Run(file.ToMesh(), cancellation: aborted);
                    return Results.Text($"{report.Verdict}: {string.Join(", ", report.Findings.Select(f => f.Rule))}");
                }
                catch (InputException e)
                {
                    return Results.Text(e.Message, statusCode: 400);
                }
            }
        );

        static IResult Made(string name, TestObjectSpec spec, CancellationToken aborted)
        {
            TestObject made = TestObject.Of(spec);
            if (made.HasErrors)
                return Results.Text(string.Join("\n", made.Findings.Select(f => f.Message)), statusCode: 422);
            string header = ObjectHeader.Of(name, SpecDigest.Of(spec));
            return Results.Stream(to => StlWriter.WriteAsync(to, made.ToMesh(), header, aborted), "model/stl");
        }
        // end
    }
}
