namespace AutoSweep.Sim.Scpi;

/// <summary>A message unit that cannot be carried out; ends the unit and puts its error into the queue.</summary>
internal sealed class ScpiErrorException(ScpiError error) : Exception(error.ToString())
{
    public ScpiError Error { get; } = error;
}
