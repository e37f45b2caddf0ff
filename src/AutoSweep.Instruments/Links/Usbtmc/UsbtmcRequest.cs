namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>Requests to the Linux kernel's usbtmc driver: include/uapi/linux/usb/tmc.h, the same on x86-64 and arm64.</summary>
public enum UsbtmcRequest : uint
{
    /// <summary>Device clear (USBTMC 1.0, 4.2.1.6).</summary>
    Clear = 0x5B02,

    /// <summary>Gives up an answer that is on its way.</summary>
    AbortBulkIn = 0x5B04,

    /// <summary>The time-out of this open file, in milliseconds; 100 at least.</summary>
    SetTimeout = 0x40045B0A,

    /// <summary>What the instrument can of USB488; kernel 4.19 on.</summary>
    Get488Capabilities = 0x80015B11,

    /// <summary>The status byte, which comes while the instrument is busy too; kernel 4.19 on.</summary>
    ReadStatusByte = 0x80015B12,

    /// <summary>Remote control on (1) or off (0); kernel 4.19 on.</summary>
    RemoteEnable = 0x40015B13,

    /// <summary>Gives the front panel back; kernel 4.19 on.</summary>
    GoToLocal = 0x5B14,

    /// <summary>The attributes of the last read: bit 0 is its end mark (EOM); kernel 4.20 on.</summary>
    MessageInAttributes = 0x80015B18,
}
