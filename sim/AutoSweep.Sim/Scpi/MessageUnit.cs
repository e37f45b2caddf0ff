namespace AutoSweep.Sim.Scpi;

/// <summary>One unit of a message: the header as written, in capitals, and the parameters.</summary>
/// <param name="Header">Without a leading colon, with a query's mark.</param>
/// <param name="FromRoot">Whether it was written with a leading colon or is a common command.</param>
/// <param name="Parameters">As written, blanks around them taken off.</param>
internal sealed record MessageUnit(string Header, bool FromRoot, IReadOnlyList<string> Parameters)
{
    public bool IsCommon => Header[0] == '*';

    public bool IsQuery => Header[^1] == '?';
}
