namespace AutoSweep.Instruments.Links;

/// <summary>A LAN instrument with its own protocol, VXI-11 or HiSLIP: <c>TCPIP[board]::host[::device][::INSTR]</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Host">Host name or address.</param>
/// <param name="Device">The device name, <c>inst0</c> when left out; a name that begins with <c>hislip</c> means HiSLIP.</param>
public sealed record LanInstrumentResource(string Text, string Host, string Device) : ResourceName(Text);
