namespace AutoSweep.Instruments.Links;

/// <summary>A VISA resource name (VPP-4.3, section 4.3): which instrument, over which kind of link.</summary>
/// <remarks>Its sub-types are the kinds: the type chooses the link.</remarks>
/// <param name="Text">The name as written.</param>
public abstract record ResourceName(string Text)
{
    /// <summary>Reads a resource name, or one of the shorthands <c>/dev/ttyUSB0</c>, <c>COM3</c> and <c>host:5025</c>.</summary>
    /// <param name="text">The name; keywords in any letter case.</param>
    /// <exception cref="Core.BenchFaultException">Not a name that VPP-4.3 knows; says what was found, expected and what to do.</exception>
    public static ResourceName Parse(string text) => ResourceNameGrammar.Parse(text);

    /// <summary>The name as written.</summary>
    public sealed override string ToString() => Text;
}
