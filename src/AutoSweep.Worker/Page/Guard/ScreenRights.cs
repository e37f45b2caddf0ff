using AutoSweep.Core;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>What one screen, one circuit of the page, may do.</summary>
/// <param name="controls">Which screen holds the controls.</param>
public sealed class ScreenRights(Controls controls)
{
    // What the script of the page makes up: 128 bits in hexadecimal.
    private const int IdentityLength = 32;

    private bool _isHere;

    /// <summary>Tells this screen from every other. A reload keeps it; a second tab has another.</summary>
    public string Screen { get; set; } = Guid.NewGuid().ToString("N");

    /// <summary>Whether it may change anything.</summary>
    public bool HoldsControls => controls.Holder == Screen;

    /// <summary>Whether another screen holds the controls, so that this one only watches.</summary>
    public bool OnlyWatches => controls.Holder is { } holder && holder != Screen;

    /// <summary>Learns which screen this is, and that it is there.</summary>
    /// <param name="identity">What the browser's tab calls itself; anything but 32 hexadecimal digits is not taken.</param>
    public void Identify(string? identity)
    {
        var before = Screen;
        Away();
        if (identity?.Length == IdentityLength && identity.All(char.IsAsciiHexDigit))
            Screen = identity;
        controls.Arrive(Screen, before);
        _isHere = true;
    }

    /// <summary>The screen's connection is up.</summary>
    public void Here()
    {
        if (!_isHere)
            controls.Arrive(Screen);
        _isHere = true;
    }

    /// <summary>The screen's connection is down, or the screen is closed.</summary>
    public void Away()
    {
        if (_isHere)
            controls.Leave(Screen);
        _isHere = false;
    }

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
