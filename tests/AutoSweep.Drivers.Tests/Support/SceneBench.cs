using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Sessions;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>A scene's meter with its driver on it.</summary>
public sealed class SceneBench : IAsyncDisposable
{
    // A test that waits for what never comes fails instead of hanging. Two cores shared with others: a second can become many.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly SessionPlayer _player;

    public SceneBench(DriverScene scene)
    {
        Scene = scene;
        Meter = new(scene, Time, scene.Opening[0].EndsWith("serial", StringComparison.Ordinal));
        var session = new ScpiSession(
            Meter, MeterSessionOptions.Of(scene.Driver, new() { QueryTimeout = TimeSpan.FromHours(2) }), Time, NullLogger.Instance);
        _player = new(scene.Driver, _ => session, Time);
    }

    public DriverScene Scene { get; }

    public InstantTime Time { get; } = new();

    public SceneMeter Meter { get; }

    public static async Task<SceneBench> OpenAsync(string driver, string call)
    {
        var bench = new SceneBench(DriverScene.Of(driver, call));
        await bench.OpenAsync();
        return bench;
    }

    public async Task OpenAsync()
    {
        foreach (var call in Scene.Opening)
            await PlayAsync(call);
    }

    public Task<string?> ReadAsync(CancellationToken cancellationToken = default) => PlayAsync(Scene.Call, cancellationToken);

    public ValueTask DisposeAsync() => _player.DisposeAsync();

    private Task<string?> PlayAsync(string call, CancellationToken cancellationToken = default) =>
        _player.PlayAsync(call, cancellationToken).WaitAsync(Patience, TimeProvider.System, CancellationToken.None);
}
