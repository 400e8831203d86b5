using FsCheck;
using Microsoft.FSharp.Core;

#if !FRESH_SEEDS
[assembly: FsCheck.Xunit.Properties(Replay = CalibGeom.Tests.Shared.PropertySeed.Text)]

#endif

namespace CalibGeom.Tests.Shared;

/// <summary>
/// One seed for every property, so that a run says the same on every machine;
/// <c>dotnet test -p:PropertySeeds=fresh</c> draws new cases instead.
/// </summary>
public static class PropertySeed
{
    public const string Text = "(20261126,1)";

    /// <summary>The configuration of a property that is checked by hand.</summary>
    public static Config Runs(int runs)
    {
        Config config = Config.QuickThrowOnFailure.WithMaxTest(runs);
#if !FRESH_SEEDS
        config = config.WithReplay(FSharpOption<Replay>.Some(new Replay(new Rnd(20261126, 1), FSharpOption<int>.None)));
#endif
        return config;
    }
}
