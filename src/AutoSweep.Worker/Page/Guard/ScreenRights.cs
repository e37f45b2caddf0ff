using AutoSweep.Core;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>What one screen, one circuit of the page, may do.</summary>
/// <param name="controls">Which screen holds the controls.</param>
public sealed class ScreenRights(Controls controls)
{
    /// <summary>Tells this screen from every other.</summary>
    public string Screen { get; set; } = Guid.NewGuid().ToString("N");

    /// <summary>Whether it may change anything.</summary>
    public bool HoldsControls => controls.Holder == Screen;

    /// <summary>Takes the controls where nobody holds them.</summary>
    /// <exception cref="BenchFaultException">Another screen holds them.</exception>
    public void Require()
    {
        if (!controls.TryTake(Screen))
        {
            throw new BenchFaultException(BenchFault.StageNotReady, "another screen holds the controls", "the screen that holds them",
                "ask for the controls on this screen, or work on the other one");
        }
    }
}
