using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace CalibGeom.Web.Tests;

/// <summary>The server of docs/web.md, run by Kestrel on a free port of this machine, and a client of it.</summary>
public sealed class RunningServer : IAsyncLifetime
{
    private readonly WebApplication app;

    public RunningServer()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        // Whatever the machine's environment says of ports.
        builder.Services.Configure<KestrelServerOptions>(o => o.Listen(IPAddress.Loopback, 0));
        app = builder.Build();
        ObjectServer.Map(app);
        // Writes as no server may: shows that this one would not let it pass.
        app.MapGet("/synchronous", (HttpContext web) => web.Response.Body.WriteByte(1));
    }

    internal HttpClient Client { get; } = new() { Timeout = TimeSpan.FromMinutes(5) };

    internal bool AllowsSynchronous =>
        app.Services.GetRequiredService<IOptions<KestrelServerOptions>>().Value.AllowSynchronousIO;

    public async Task InitializeAsync()
    {
        await app.StartAsync();
        Client.BaseAddress = new Uri(app.Urls.Single());
    }

    public async Task DisposeAsync()
    {
        Client.Dispose();
        await app.DisposeAsync();
    }
}
