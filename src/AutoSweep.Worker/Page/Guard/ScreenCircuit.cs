using Microsoft.AspNetCore.Components.Server.Circuits;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Tells the controls when a screen's connection comes and goes.</summary>
/// <param name="rights">The screen.</param>
public sealed class ScreenCircuit(ScreenRights rights) : CircuitHandler
{
    private bool _wasDown;

    /// <inheritdoc/>
    public override Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        // The first time the screen has not said yet which one it is; the strip waits for that.
        if (_wasDown)
            rights.Here();
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        _wasDown = true;
        rights.Away();
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override Task OnCircuitClosedAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        rights.Away();
        return Task.CompletedTask;
    }
}
