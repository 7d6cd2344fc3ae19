using Coldwright.Machine.Feed;

namespace Coldwright.Simulation.Batch;

/// <summary>What flows where at one moment of a batch, kg/s and W.</summary>
internal struct BatchFlows
{
    public ContentState Vessel;
    public double SupplyPa, LinePa, FillPa, ShellK, LineK, FlaskWallK, DischargeK;
    public double Source, Fill, In, InEnthalpy, Liquid, Vapour, Flash, LineBoil, FlaskBoil;
    public double CoolingW, FeedWorkW, ShellGainW, ShellLossW, RoomToLineW, LineWallW, FlaskWallW, RoomToFlaskW;
}
