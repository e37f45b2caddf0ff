namespace AutoSweep.Instruments.Links;

/// <summary>A serial line: <c>ASRL3::INSTR</c>, <c>ASRLCOM3::INSTR</c> or <c>ASRL/dev/ttyUSB0::INSTR</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Port">The operating system's name of the port, such as <c>COM3</c> or <c>/dev/ttyUSB0</c>.</param>
public sealed record SerialResource(string Text, string Port) : ResourceName(Text);
